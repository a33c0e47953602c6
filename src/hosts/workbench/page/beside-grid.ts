import '../../../../taskpane/index.ts';
import type { HostPort } from '../../../workbook/port.ts';

export { functions } from '../../../../functions/index.ts';

/** The pane on a port. */
export function makePane(port: HostPort): HTMLElement {
  const pane = document.createElement('pour-pane') as HTMLElement & { port: HostPort };
  pane.port = port;
  return pane;
}

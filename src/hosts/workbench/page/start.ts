import { functions } from '../../../../functions/index.ts';
import '../../../../taskpane/index.ts';
import type { HostPort } from '../../../workbook/port.ts';
import { openWorkbench } from './open-workbench.ts';

/** Opens the workbook that this page's server holds, with the pane beside it. */
const pane = document.createElement('pour-pane') as HTMLElement & { port: HostPort };

await openWorkbench(functions, (port) => {
  pane.port = port;
  return pane;
});

import type { HostPort } from '../../../workbook/port.ts';
import { createOpening, Stopped } from './opening.ts';
import './page.css';
import { createPageFrame } from './page-frame.ts';
import type { CellFunctions } from './register-functions.ts';
import { createServerApi, FileLost } from './server-api.ts';

/** What stands beside the grid: the functions its cells ask, and the pane. */
export interface Beside {
  readonly functions: CellFunctions;
  makePane(port: HostPort): HTMLElement;
}

/**
 * Opens the workbook that this page's server holds. The page itself is small: the grid and what
 * stands beside it come while the workbook is read.
 */
export async function openWorkbench(loadBeside: () => Promise<Beside>): Promise<void> {
  const opening = createOpening();
  const server = createServerApi(opening.signal);
  const frame = createPageFrame(() => server.takeBackup());
  try {
    const told = (share: number) => opening.pause('Reading the workbook', share);
    const [image, help, texts, { showWorkbook }, beside] = await Promise.all([
      server.book(told),
      server.functionHelp(),
      server.texts(),
      import(/* webpackChunkName: "grid" */ './show-workbook.ts'),
      loadBeside(),
    ]);
    frame.showBook(image);
    await showWorkbook({ image, help, texts, beside, server, frame, opening });
  } catch (thrown) {
    if (thrown instanceof Stopped) {
      frame.showStopped();
      return;
    }
    frame.showFailure(thrown instanceof Error ? thrown.message : String(thrown));
    if (thrown instanceof FileLost) {
      frame.offerBackup(thrown.backup);
      return;
    }
    throw thrown;
  }
}

import type { HostPort } from '../../../workbook/port.ts';
import { type FileHome, FileLost } from './file-home.ts';
import { createOpening, Stopped } from './opening.ts';
import './page.css';
import { createPageFrame } from './page-frame.ts';
import type { CellFunctions } from './register-functions.ts';

/** What stands beside the grid: the functions its cells ask, and the pane. */
export interface Beside {
  readonly functions: CellFunctions;
  makePane(port: HostPort): HTMLElement;
}

/**
 * Opens the workbook in its home. The page itself is small: the grid and what stands beside it come
 * while the workbook is read.
 */
export async function openWorkbench(
  homeUntil: (signal: AbortSignal) => FileHome,
  loadBeside: () => Promise<Beside>,
): Promise<void> {
  const opening = createOpening();
  const home = homeUntil(opening.signal);
  const frame = createPageFrame(home.backups);
  try {
    const told = (share: number) => opening.pause('Reading the workbook', share);
    const [image, help, texts, { showWorkbook }, beside] = await Promise.all([
      home.book(told),
      home.functionHelp(),
      home.texts(),
      import(/* webpackChunkName: "grid" */ './show-workbook.ts'),
      loadBeside(),
    ]);
    frame.showBook(image);
    await showWorkbook({ image, help, texts, beside, home, frame, opening });
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

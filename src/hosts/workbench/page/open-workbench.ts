import type { HostPort } from '../../../workbook/port.ts';
import { type FileHome, FileLost } from './file-home.ts';
import { createOpening, Stopped } from './opening.ts';
import './page.css';
import { createPageFrame } from './page-frame.ts';
import type { CellFunctions } from './register-functions.ts';
import { showBook } from './show-book.ts';

/** What stands beside the sheets: the functions their cells ask, and the pane. */
export interface Beside {
  readonly functions: CellFunctions;
  makePane(port: HostPort): HTMLElement;
}

/**
 * Opens the workbook in its home. The page itself is small: what stands beside the sheets comes
 * while the workbook is read, and the grid once the pane is there.
 */
export async function openWorkbench(
  homeUntil: (signal: AbortSignal) => FileHome,
  loadBeside: () => Promise<Beside>,
): Promise<void> {
  const opening = createOpening({
    stopped: 'Opening was stopped. The file is as it was.',
    again: 'Open it',
    onAgain: () => {
      location.reload();
    },
  });
  const home = homeUntil(opening.signal);
  const frame = createPageFrame(home.backups);
  try {
    const told = (share: number) => opening.pause('Reading the workbook', share);
    const [image, texts, beside] = await Promise.all([home.book(told), home.texts(), loadBeside()]);
    opening.finish();
    await showBook({ image, texts, beside, home, frame });
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

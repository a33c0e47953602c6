import type { WorkbookImage } from '../../../xlsx/image.ts';
import { element, show, timeInWords } from './elements.ts';
import type { Backups } from './file-home.ts';
import type { SaveState } from './file-state.ts';
import type { Saver } from './saver.ts';
import { textOfEdits } from './unsaved-text.ts';

/** The page around the sheets: its header line, its bars and the place for the pane. */
export interface PageFrame {
  showBook(image: WorkbookImage): void;
  /** `letGo` is called before the maker has the page load anew. */
  showSaving(saver: Saver, letGo: () => void): void;
  mountPane(pane: HTMLElement): void;
  /** Shows a sentence over the grid's foot; "" takes it away. */
  say(sentence: string): void;
  /** The maker stopped the opening. */
  showStopped(): void;
  showFailure(sentence: string): void;
  /** Offers the backup that was the file until that time, in milliseconds; undefined takes the offer away. */
  offerBackup(until: number | undefined): void;
}

/** Takes hold of the elements of index.html. */
export function createPageFrame(backups: Backups | undefined): PageFrame {
  const title = element('file-name');
  const pane = element('pane');
  element('take-backup').addEventListener('click', () => {
    void backups?.take().then((sentence) => {
      if (sentence !== undefined) show('conflict-text', sentence);
      else if (title.textContent === NOT_OPENED) location.reload();
    });
  });
  return {
    showBook(image) {
      title.textContent = image.fileName;
      document.title = `${image.fileName} – Pour Ledger`;
      show('not-shown', image.notShown.length === 0 ? '' : keptSentence(image.notShown));
    },
    showSaving,
    mountPane: (content) => {
      pane.replaceChildren(content);
    },
    say: (sentence) => {
      show('message', sentence);
    },
    showStopped() {
      title.textContent = 'Not open';
      show('not-shown', '');
    },
    showFailure(sentence) {
      element('opening').hidden = true;
      title.textContent = NOT_OPENED;
      show('conflict-text', sentence);
      element('conflict').hidden = false;
      element('conflict-load').textContent = 'Try again';
      element('conflict-load').addEventListener('click', () => {
        location.reload();
      });
    },
    offerBackup,
  };
}

const NOT_OPENED = 'The workbook could not be opened';

function offerBackup(until: number | undefined): void {
  const button = element('take-backup');
  button.hidden = until === undefined;
  if (until === undefined) return;
  button.textContent = `Go back to the backup of ${timeInWords(until)}`;
}

const keptSentence = (parts: readonly string[]): string =>
  `Kept in the file but not shown here: ${parts.join(', ')}.`;

function showSaving(saver: Saver, letGo: () => void): void {
  const again = element('save-again');
  const update = () => {
    const { state, hasUnsaved } = saver;
    show('save-state', wordsOf(saver));
    element('save-state').dataset['kind'] = state.kind;
    again.hidden = state.kind !== 'not saved';
    const trouble = troubleOf(state, hasUnsaved);
    const backup = state.kind === 'not saved' ? state.backup : undefined;
    element('conflict').hidden = trouble === '' && backup === undefined;
    show('conflict-text', trouble);
    element('conflict-load').hidden = state.kind !== 'changed outside';
    element('conflict-keep').hidden = !hasUnsaved;
    offerBackup(backup);
  };
  saver.onState(update);
  update();
  again.addEventListener('click', () => void saver.saveNow());
  element('conflict-load').addEventListener('click', () => {
    letGo();
    location.reload();
  });
  element('conflict-keep').addEventListener('click', () => {
    download('my-cells.txt', textOfEdits(saver.unsaved()));
  });
}

/** What stands in the way of saving, and what to do; "" where nothing does. */
function troubleOf({ kind }: SaveState, hasUnsaved: boolean): string {
  switch (kind) {
    case 'saved':
    case 'saving':
    case 'reads only':
      return '';
    case 'not saved':
      return hasUnsaved ? IN_THIS_PAGE_ONLY : '';
    case 'not connected':
      return `${NOT_CONNECTED} ${hasUnsaved ? IN_THIS_PAGE_ONLY : ''}`;
    case 'changed outside':
      return hasUnsaved ? OUTSIDE_WITH_MINE : OUTSIDE;
  }
}

const IN_THIS_PAGE_ONLY =
  'Cells you changed are in this page only: leave it open, or keep them as a text file.';
const NOT_CONNECTED =
  'The workbench does not answer, so nothing is saved. Start it again with the same workbook: this page then goes on by itself.';
/** Recorded without any sheet in sight: the file's formulas still show what they came to before. */
const SAVED_LATE = 'Saved; figures in the sheets follow when they are shown';
const OUTSIDE =
  'The file was changed outside this page. Nothing is saved from here until you load the new version.';
const OUTSIDE_WITH_MINE =
  'The file was changed outside this page while cells you changed here were not saved yet. ' +
  'Loading the new version drops your cells: keep them as a text file first if you need them.';

function wordsOf({ state, hasUnsaved, isLate }: Saver): string {
  switch (state.kind) {
    case 'saved':
      return isLate ? SAVED_LATE : 'Saved';
    case 'saving':
      return 'Saving…';
    case 'not saved':
      return `Not saved: ${state.sentence}`;
    case 'reads only':
      return 'Only to look at';
    case 'not connected':
      return hasUnsaved ? 'Not connected, not saved' : 'Not connected';
    case 'changed outside':
      return 'Not saved: the file changed outside';
  }
}

function download(name: string, text: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type: 'text/plain' }));
  link.download = name;
  link.click();
  URL.revokeObjectURL(link.href);
}

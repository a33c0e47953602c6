import type { WorkbookImage } from '../../xlsx/image.ts';
import { element, show } from './elements.ts';
import type { Saver, SaveState } from './saver.ts';
import { textOfEdits } from './unsaved-text.ts';

/** The page around the grid: its header line, its bars and the place for the pane. */
export interface PageFrame {
  showBook(image: WorkbookImage): void;
  showSaving(saver: Saver): void;
  mountPane(pane: HTMLElement): void;
  /** Shows a sentence over the grid's foot; "" takes it away. */
  say(sentence: string): void;
  /** The maker stopped the opening. */
  showStopped(): void;
  showFailure(sentence: string): void;
}

/** Takes hold of the elements of index.html. */
export function createPageFrame(): PageFrame {
  const title = element('file-name');
  const pane = element('pane');
  const toggle = element('pane-toggle');
  toggle.addEventListener('click', () => {
    pane.hidden = !pane.hidden;
    toggle.textContent = pane.hidden ? 'Show the pane' : 'Hide the pane';
    toggle.setAttribute('aria-expanded', String(!pane.hidden));
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
      title.textContent = 'The workbook could not be opened';
      show('conflict-text', sentence);
      element('conflict').hidden = false;
      element('conflict-load').textContent = 'Try again';
      element('conflict-load').addEventListener('click', () => {
        location.reload();
      });
    },
  };
}

const keptSentence = (parts: readonly string[]): string =>
  `Kept in the file but not shown here: ${parts.join(', ')}.`;

function showSaving(saver: Saver): void {
  const again = element('save-again');
  const update = (state: SaveState) => {
    show('save-state', wordsOf(state));
    element('save-state').dataset['kind'] = state.kind;
    again.hidden = state.kind !== 'not saved';
    const isOutside = state.kind === 'changed outside';
    element('conflict').hidden = !isOutside;
    if (isOutside) show('conflict-text', state.hasUnsaved ? OUTSIDE_WITH_MINE : OUTSIDE);
    element('conflict-keep').hidden = !(isOutside && state.hasUnsaved);
  };
  saver.onState(update);
  update(saver.state);
  again.addEventListener('click', () => void saver.saveNow());
  element('conflict-load').addEventListener('click', () => {
    window.removeEventListener('beforeunload', warn);
    location.reload();
  });
  element('conflict-keep').addEventListener('click', () => {
    download('my-cells.txt', textOfEdits(saver.unsaved()));
  });
  const warn = (event: BeforeUnloadEvent) => {
    const { state } = saver;
    const isLost = state.kind === 'changed outside' ? state.hasUnsaved : state.kind !== 'saved';
    if (isLost) event.preventDefault();
  };
  window.addEventListener('beforeunload', warn);
  // Leaving the window is a good moment: do not wait for the pause after typing.
  document.addEventListener('visibilitychange', () => {
    if (document.hidden && saver.state.kind === 'saving') void saver.saveNow();
  });
}

const OUTSIDE =
  'The file was changed outside this page. Nothing is saved from here until you load the new version.';
const OUTSIDE_WITH_MINE =
  'The file was changed outside this page while cells you changed here were not saved yet. ' +
  'Loading the new version drops your cells: keep them as a text file first if you need them.';

function wordsOf(state: SaveState): string {
  switch (state.kind) {
    case 'saved':
      return 'Saved';
    case 'saving':
      return 'Saving…';
    case 'not saved':
      return `Not saved: ${state.sentence}`;
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

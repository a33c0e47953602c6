import type { SaveAnswer } from '../../xlsx/image.ts';
import type { Changes, Taken } from './changes.ts';
import type { Grid } from './grid.ts';
import type { ServerApi } from './server-api.ts';

/** Where the workbook stands against its file. */
export type SaveState =
  | { readonly kind: 'saved' }
  | { readonly kind: 'saving' }
  | { readonly kind: 'not saved'; readonly sentence: string }
  /** The file was changed by something else; nothing is written any more until it is loaded again. */
  | { readonly kind: 'changed outside'; readonly hasUnsaved: boolean };

/** Keeps the file in step with the grid, one save at a time. */
export interface Saver {
  readonly state: SaveState;
  onState(listener: (state: SaveState) => void): void;
  /** Saves everything now; resolves with the sentence when the file could not be written. */
  saveNow(): Promise<SaveAnswer>;
  /** What waits unsaved, to be shown or kept as text. */
  unsaved(): Taken['edits'];
}

/** How long after the last keystroke a hand edit is saved, in milliseconds. */
const TYPING_PAUSE_MS = 800;

/** Starts saving: edits by hand after a pause, everything else when asked. */
export function createSaver(
  grid: Grid,
  changes: Changes,
  server: ServerApi,
  firstVersion: string,
): Saver {
  const file = createFileState(changes, firstVersion);
  let timer: ReturnType<typeof setTimeout> | undefined;
  let queue: Promise<unknown> = Promise.resolve();
  const saveOnce = async (): Promise<SaveAnswer> => {
    clearTimeout(timer);
    await grid.settled();
    const version = file.version;
    if (file.state.kind === 'changed outside') return { kind: 'changed outside', version };
    if (!changes.isWaiting) {
      file.become({ kind: 'saved' });
      return { kind: 'saved', version };
    }
    file.become({ kind: 'saving' });
    const taken = changes.take();
    const answer = await server.save({ baseVersion: version, edits: taken.edits });
    file.answered(answer, taken);
    return answer;
  };
  const saveNow = () => {
    const next = queue.then(saveOnce);
    queue = next.catch(() => undefined);
    return next;
  };
  changes.onChange(() => {
    file.edited();
    if (file.state.kind !== 'saving') return;
    clearTimeout(timer);
    timer = setTimeout(() => void saveNow(), TYPING_PAUSE_MS);
  });
  server.onOutsideChange(file.heard);
  return {
    get state() {
      return file.state;
    },
    onState: file.onState,
    saveNow,
    unsaved() {
      const taken = changes.take();
      taken.returned();
      return taken.edits;
    },
  };
}

/** What is known of the file: the version we stand on, and whether it is still the file's own. */
function createFileState(changes: Changes, firstVersion: string) {
  const listeners = new Set<(state: SaveState) => void>();
  let state: SaveState = { kind: 'saved' };
  let version = firstVersion;
  /** A version the server told of while a save was under way: it may be that save's own. */
  let pending: string | undefined;
  const become = (next: SaveState) => {
    state = next;
    for (const listener of listeners) listener(next);
  };
  const outside = () => {
    become({ kind: 'changed outside', hasUnsaved: changes.isWaiting });
  };
  return {
    get state() {
      return state;
    },
    get version() {
      return version;
    },
    become,
    onState(listener: (state: SaveState) => void) {
      listeners.add(listener);
    },
    edited() {
      if (state.kind === 'changed outside') outside();
      else become({ kind: 'saving' });
    },
    heard(now: string) {
      if (state.kind === 'saving') pending = now;
      else if (now !== version) outside();
    },
    answered(answer: SaveAnswer, taken: Taken) {
      if (answer.kind === 'saved') {
        version = answer.version;
        taken.saved();
        become(changes.isWaiting ? { kind: 'saving' } : { kind: 'saved' });
        if (pending !== undefined && pending !== version) outside();
      } else {
        taken.returned();
        if (answer.kind === 'refused') become({ kind: 'not saved', sentence: answer.sentence });
        else outside();
      }
      pending = undefined;
    },
  };
}

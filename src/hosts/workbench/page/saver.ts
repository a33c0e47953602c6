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

/** How long typing, and formulas that don't come to rest over it, may keep cells from the file. */
const LONGEST_WAIT_MS = 5_000;

/** Starts saving: edits by hand after a pause, everything else when asked. */
export function createSaver(
  grid: Grid,
  changes: Changes,
  server: ServerApi,
  firstVersion: string,
): Saver {
  const file = createFileState(changes, firstVersion);
  const typing = createTimer();
  const inTurn = oneAtATime();
  /** The file holds answers older than its cells. */
  let isLate = false;
  const saveOnce = async (settled: Promise<boolean>): Promise<SaveAnswer> => {
    typing.clear();
    const isSettled = await settled;
    const version = file.version;
    if (file.state.kind === 'changed outside') return { kind: 'changed outside', version };
    if (!changes.isWaiting && !(isLate && isSettled)) {
      file.become({ kind: 'saved' });
      return { kind: 'saved', version };
    }
    file.become({ kind: 'saving' });
    const taken = changes.take();
    const answer = await server.save({ baseVersion: version, edits: taken.edits });
    file.answered(answer, taken);
    isLate = !isSettled;
    return answer;
  };
  const settles = () => grid.settled().then(() => true);
  const saveNow = () => inTurn(() => saveOnce(settles()));
  const saveTyped = async (): Promise<void> => {
    await inTurn(() => saveOnce(Promise.race([settles(), unsettledAfter(LONGEST_WAIT_MS)])));
    if (isLate && file.state.kind !== 'changed outside') void saveTyped();
  };
  changes.onChange(() => {
    file.edited();
    if (file.state.kind === 'saving') typing.set(() => void saveTyped());
  });
  server.onOutsideChange(file.heard);
  return {
    get state() {
      return file.state;
    },
    onState: file.onState,
    saveNow,
    unsaved: () => lookAt(changes),
  };
}

function lookAt(changes: Changes): Taken['edits'] {
  const taken = changes.take();
  taken.returned();
  return taken.edits;
}

function oneAtATime() {
  let queue: Promise<unknown> = Promise.resolve();
  return <T>(work: () => Promise<T>): Promise<T> => {
    const next = queue.then(work);
    queue = next.catch(() => undefined);
    return next;
  };
}

const unsettledAfter = (ms: number): Promise<boolean> =>
  new Promise((resolve) => {
    setTimeout(resolve, ms, false);
  });

/** Waits for a pause after what was set last, but never past the longest wait after the first. */
function createTimer() {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let latest = 0;
  return {
    set(run: () => void) {
      const now = Date.now();
      if (timer === undefined) latest = now + LONGEST_WAIT_MS;
      clearTimeout(timer);
      timer = setTimeout(run, Math.max(0, Math.min(TYPING_PAUSE_MS, latest - now)));
    },
    clear() {
      clearTimeout(timer);
      timer = undefined;
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

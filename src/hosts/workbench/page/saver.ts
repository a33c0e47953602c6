import type { SaveAnswer, SheetEdits } from '../../xlsx/image.ts';
import type { Changes } from './changes.ts';
import { createFileState, type SaveState } from './file-state.ts';
import type { Grid } from './grid.ts';
import type { ServerApi } from './server-api.ts';

/** Keeps the file in step with the grid, one save at a time. */
export interface Saver {
  readonly state: SaveState;
  /** Whether the file may not hold all that the grid does. */
  readonly hasUnsaved: boolean;
  onState(listener: (state: SaveState) => void): void;
  /** Saves everything now; resolves once it is known how that ended, with the sentence where it could not be. */
  saveNow(): Promise<SaveAnswer>;
  /** What is unsaved, to be shown or kept as text. */
  unsaved(): readonly SheetEdits[];
  /** The page goes away: sends what is unsaved, and hears no answer. */
  leave(): void;
}

/** How long after the last keystroke a hand edit is saved, in milliseconds. */
const TYPING_PAUSE_MS = 800;

/** How long typing, and formulas that don't come to rest over it, may keep cells from the file. */
const LONGEST_WAIT_MS = 5_000;

/** Starts saving: edits by hand after a pause, everything else when asked. `newId` tells saves apart. */
export function createSaver(
  grid: Grid,
  changes: Changes,
  server: Pick<ServerApi, 'save' | 'look' | 'sendLast' | 'connection'>,
  firstVersion: string,
  newId: () => string,
): Saver {
  const file = createFileState(changes, server.connection, firstVersion);
  const typing = createTimer();
  const inTurn = oneAtATime();
  /** The file holds answers older than its cells. */
  let isLate = false;
  const saveOnce = async (settled: Promise<boolean>): Promise<SaveAnswer> => {
    typing.clear();
    const isSettled = await settled;
    const { version: baseVersion } = file;
    if (file.isOutside) return { kind: 'changed outside', version: baseVersion };
    if (!changes.isWaiting && !(isLate && isSettled))
      return { kind: 'saved', version: baseVersion };
    const taken = changes.take();
    const request = { id: newId(), baseVersion, edits: taken.edits };
    file.begin({ request, taken });
    const answer = await server.save(request);
    file.end(answer);
    isLate = !isSettled;
    return answer;
  };
  const settles = () => grid.settled().then(() => true);
  const saveTyped = async (): Promise<void> => {
    await inTurn(() => saveOnce(Promise.race([settles(), unsettledAfter(LONGEST_WAIT_MS)])));
    if (isLate && !file.isOutside) void saveTyped();
  };
  changes.onChange(() => {
    file.edited();
    if (!file.isOutside) typing.set(() => void saveTyped());
  });
  server.connection.onNews((news) => {
    if (file.isAsTold(news)) return;
    // It may be of a save under way: once that has ended, the file itself tells.
    void inTurn(async () => {
      file.see(await server.look());
    });
  });
  return {
    get state() {
      return file.state;
    },
    get hasUnsaved() {
      return file.hasUnsaved;
    },
    onState: file.onState,
    saveNow: () => inTurn(() => saveOnce(settles())),
    unsaved: file.unsaved,
    leave() {
      const edits = file.unsaved();
      if (!file.isOutside && edits.length > 0) {
        server.sendLast({ id: newId(), ...file.base, edits });
      }
    },
  };
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

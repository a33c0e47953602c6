import type { SaveAnswer, SheetEdits } from '../../../xlsx/image.ts';
import type { Changes } from './changes.ts';
import type { FileHome } from './file-home.ts';
import { FileState, type SaveState } from './file-state.ts';
import type { SheetCells } from './sheet-cells.ts';
import { createPause, LONGEST_WAIT_MS } from './typing-pause.ts';

/** Keeps the file in step with the cells, one save at a time. */
export interface Saver {
  readonly state: SaveState;
  /** Whether the file may not hold all that the cells do. */
  readonly hasUnsaved: boolean;
  /** Whether the file's formulas show answers older than its cells. */
  readonly isLate: boolean;
  onState(listener: () => void): void;
  /** Saves everything now; resolves once it is known how that ended, with the sentence where it could not be. */
  saveNow(): Promise<SaveAnswer>;
  /** What is unsaved, to be shown or kept as text. */
  unsaved(): readonly SheetEdits[];
  /** The page goes away: sends what is unsaved, and hears no answer. */
  leave(): void;
}

type Home = Pick<FileHome, 'save' | 'look' | 'note' | 'sendLast' | 'connection' | 'readsOnly'>;

/** Starts saving: edits by hand after a pause, everything else when asked. `newId` tells saves apart. */
export function createSaver(
  sheets: SheetCells,
  changes: Changes,
  home: Home,
  firstVersion: string,
  newId: () => string,
): Saver {
  const file = new FileState(changes, home, firstVersion);
  const inTurn = oneAtATime();
  const { saveNow, isLate } = saving({ sheets, changes, home, file, newId, inTurn });
  home.connection.onNews((news) => {
    if (file.isAsTold(news)) return;
    // It may be of a save under way: once that has ended, the file itself tells.
    void inTurn(async () => {
      const seen = await home.look();
      if (seen !== undefined) file.see(seen);
    });
  });
  return {
    get state() {
      return file.state;
    },
    get hasUnsaved() {
      return file.hasUnsaved;
    },
    get isLate() {
      return isLate();
    },
    onState: (listener) => {
      file.onState(listener);
    },
    saveNow,
    unsaved: () => file.unsaved(),
    leave() {
      const edits = file.unsaved();
      if (!file.isOutside && edits.length > 0) {
        home.sendLast({ id: newId(), ...file.base, edits });
      }
    },
  };
}

interface Parts {
  readonly sheets: SheetCells;
  readonly changes: Changes;
  readonly home: Home;
  readonly file: FileState;
  readonly newId: () => string;
  readonly inTurn: InTurn;
}

interface Saving extends Pick<Saver, 'saveNow'> {
  isLate(): boolean;
}

/** Saves what is typed after a pause, and all there is whenever `saveNow` is called. */
function saving({ sheets, changes, home, file, newId, inTurn }: Parts): Saving {
  const typing = createPause();
  let isLate = false;
  const saveOnce = async (settled: Promise<boolean>): Promise<SaveAnswer> => {
    typing.clear();
    const isSettled = await settled;
    const { version: baseVersion } = file;
    if (file.isOutside) return { kind: 'changed outside', version: baseVersion };
    if (!changes.isWaiting && !(isLate && isSettled)) {
      return { kind: 'saved', version: baseVersion };
    }
    const taken = changes.take();
    const request = { id: newId(), baseVersion, edits: taken.edits };
    file.begin({ request, taken });
    const answer = await home.save(request);
    isLate = !isSettled;
    file.end(answer);
    return answer;
  };
  const settles = () => sheets.settled().then(() => sheets.worksOut);
  const saveTyped = async (): Promise<void> => {
    await inTurn(() => saveOnce(Promise.race([settles(), unsettledAfter(LONGEST_WAIT_MS)])));
    if (isLate && sheets.worksOut && !file.isOutside) void saveTyped();
  };
  changes.onChange(() => {
    file.edited();
    home.note?.({ id: newId(), ...file.base, edits: file.typed() });
    if (!file.isOutside) typing.set(() => void saveTyped());
  });
  return { saveNow: () => inTurn(() => saveOnce(settles())), isLate: () => isLate };
}

type InTurn = <T>(work: () => Promise<T>) => Promise<T>;

function oneAtATime(): InTurn {
  let queue: Promise<unknown> = Promise.resolve();
  return (work) => {
    const next = queue.then(work);
    queue = next.catch(() => undefined);
    return next;
  };
}

const unsettledAfter = (ms: number): Promise<boolean> =>
  new Promise((resolve) => {
    setTimeout(resolve, ms, false);
  });

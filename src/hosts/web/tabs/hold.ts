/** A tab's hold on a book: only the tab that has it changes the book. */
export interface Hold {
  readonly isHeld: boolean;
  /** Calls back when another tab took it by force. */
  onTaken(listener: () => void): void;
  /** Lets it go. */
  release(): void;
}

/** How a tab comes to hold a book: where it is free, as soon as it is, or from a tab that no longer answers. */
export type Grip = 'if free' | 'wait' | 'by force';

/** How long a tab that was asked may take to save and let go, in milliseconds. */
const PATIENCE_MS = 15_000;

/** How long a page that has just gone may still hold it, in milliseconds. */
const AFTERTASTE_MS = 700;

/** Takes hold of a book; `isHeld` says whether that went well. */
export function takeHold(book: string, grip: Grip): Promise<Hold> {
  return new Promise((resolve) => {
    const listeners = new Set<() => void>();
    let free: () => void = () => undefined;
    let isHeld = false;
    const hold: Hold = {
      get isHeld() {
        return isHeld;
      },
      onTaken: (listener) => void listeners.add(listener),
      release() {
        isHeld = false;
        free();
      },
    };
    const whileHeld = () => {
      isHeld = true;
      resolve(hold);
      return new Promise<void>((end) => {
        free = end;
      });
    };
    navigator.locks.request(`pour-ledger ${book}`, optionsOf(grip), whileHeld).catch(() => {
      // Never had, or lost to another tab.
      if (isHeld) for (const listener of listeners) listener();
      isHeld = false;
      resolve(hold);
    });
  });
}

function optionsOf(grip: Grip): LockOptions {
  if (grip === 'by force') return { steal: true };
  return { signal: AbortSignal.timeout(grip === 'wait' ? PATIENCE_MS : AFTERTASTE_MS) };
}

const PAGE = 'pour-ledger page';

/** Every page of this address holds this together with the others, for as long as it is open. */
export function countMeIn(): void {
  void navigator.locks.request(PAGE, { mode: 'shared' }, () => new Promise(() => undefined));
}

/** Whether no other page of this address is open. */
export async function isOnlyPage(): Promise<boolean> {
  const { held = [] } = await navigator.locks.query();
  return held.filter(({ name }) => name === PAGE).length <= 1;
}

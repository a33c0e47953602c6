import { createOpening, type Opening, Stopped } from './opening.ts';
import type { ShownGrid } from './show-grid.ts';
import { whenIdle } from './when-idle.ts';

/** The sheets, which come when they are wanted and not before. */
export interface SheetsWanted {
  /** Has them come, once the page has nothing else to do. A maker who stops it asks again by the button. */
  readonly bring: () => void;
  /** The same, for who needs them: rejects where they are stopped or can't come. */
  shown(): Promise<ShownGrid>;
  /** Resolves once they are there, by whichever attempt. */
  readonly there: Promise<void>;
  /** Whether a cell is being typed in. */
  readonly isTyping: () => boolean;
}

/** `load` brings the grid onto the page; `meanwhile` says how it is with the pane until it does. */
export function createSheetsWanted(
  load: (opening: Opening) => Promise<ShownGrid>,
  meanwhile: string,
): SheetsWanted {
  let opening: Opening | undefined;
  let coming: Promise<ShownGrid> | undefined;
  let grid: ShownGrid | undefined;
  let isThere: () => void = () => undefined;
  const there = new Promise<void>((resolve) => {
    isThere = resolve;
  });
  const start = async (): Promise<ShownGrid> => {
    opening?.finish();
    opening = createOpening({
      stopped: `The sheets are not shown. ${meanwhile}`,
      again: 'Show the sheets',
      // What was stopped may still be on its way off the page.
      onAgain: () => void Promise.allSettled([coming]).then(bring),
    });
    try {
      await whenIdle();
      opening.signal.throwIfAborted();
      grid = await load(opening);
      isThere();
      return grid;
    } catch (thrown) {
      coming = undefined;
      if (!(thrown instanceof Stopped)) opening.fail(`The sheets can’t be shown. ${meanwhile}`);
      throw thrown;
    }
  };
  const shown = () => (coming ??= start());
  const bring = () => {
    shown().catch((thrown: unknown) => {
      if (!(thrown instanceof Stopped)) throw thrown;
    });
  };
  return { bring, shown, there, isTyping: () => grid?.isTyping() ?? false };
}

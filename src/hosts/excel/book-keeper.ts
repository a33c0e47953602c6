import type { Cell } from '../../workbook/port.ts';
import type { Run } from './apply-change.ts';
import { healBook, lookAtBook } from './heal-book.ts';
import { sentenceOfFault } from './host-fault.ts';
import type { Wait } from './patient-run.ts';

/** So long after the last one that asked, all are served at once. */
const QUIET_MS = 500;
/** What an unfinished Book cell is given to finish by itself before each try to work it out again. */
const TRIES_MS = [3_000, 10_000, 30_000] as const;

/** What the keeper takes from around it. */
export interface KeeperSurroundings {
  /** Runs a batch once no cell is being edited any more. */
  readonly runLater: Run;
  readonly wait: Wait;
  /** Shows a sentence about the Book cell in place of the last one; undefined once all is well. */
  readonly say: (sentence: string | undefined) => void;
}

/** Keeps the cell named Book worked out in this memory; one piece of work at a time. */
export class BookKeeper {
  readonly #around: KeeperSurroundings;
  #asked = 0;
  #heals = false;
  #working: Promise<boolean> | undefined;

  constructor(around: KeeperSurroundings) {
    this.#around = around;
  }

  /** Works the cell out again soon, once for all who ask meanwhile. Answers whether there is such a cell. */
  heal(): Promise<boolean> {
    this.#heals = true;
    return this.look();
  }

  /** Looks at the cell soon, and works it out again only where it stays unfinished or failed. */
  look(): Promise<boolean> {
    this.#asked += 1;
    this.#working ??= this.#work().finally(() => {
      this.#working = undefined;
    });
    return this.#working;
  }

  async #work(): Promise<boolean> {
    let shown: Cell | undefined;
    for (let served = 0; served !== this.#asked;) {
      served = this.#asked;
      await this.#around.wait(QUIET_MS);
      if (served !== this.#asked) continue;
      try {
        shown = await this.#serve();
        this.#around.say(whatIsWrong(shown));
      } catch (problem) {
        this.#around.say(
          `${sentenceOfFault(problem)} If cells show #N/A, press Enter in the cell named Book once.`,
        );
      }
    }
    return shown !== undefined;
  }

  async #serve(): Promise<Cell | undefined> {
    const { runLater, wait, say } = this.#around;
    const heals = this.#heals;
    this.#heals = false;
    let shown = await (heals ? healBook : lookAtBook)(runLater);
    for (const [tried, ms] of TRIES_MS.entries()) {
      if (!isError(shown) || (tried > 0 && isOwnAnswer(shown))) break;
      await wait(ms);
      shown = await lookAtBook(runLater);
      if (!isError(shown)) break;
      say(
        `The cell named Book shows ${shown}. It is worked out again: try ${String(tried + 1)} of ${String(TRIES_MS.length)}.`,
      );
      shown = await healBook(runLater);
    }
    return shown;
  }
}

const isError = (shown: Cell | undefined): shown is string =>
  typeof shown === 'string' && shown.startsWith('#');

/** BOOK refuses tables with this error: after one more try it is taken at its word. */
const isOwnAnswer = (shown: Cell | undefined): boolean => shown === '#VALUE!';

function whatIsWrong(shown: Cell | undefined): string | undefined {
  if (!isError(shown)) return undefined;
  if (isOwnAnswer(shown))
    return 'The cell named Book shows #VALUE!, so no other function can answer. Point at it to read what to mend.';
  return `The cell named Book still shows ${shown}, so no other function can answer. Select it, press F2, then Enter; if it stays, save, close and reopen the workbook.`;
}

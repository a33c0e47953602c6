import type { FUniver } from '@univerjs/presets';
import type { Failures } from './failures.ts';
import type { Grid } from './grid.ts';

/** A workbook that is open: its formulas have answered and its pane stands. */
export interface ShownBook {
  readonly api: FUniver;
  readonly grid: Grid;
  readonly failures: Failures;
}

const listeners: ((book: ShownBook) => void)[] = [];

/** Hears of each workbook that is shown from now on. In the page as it is shipped nobody listens. */
export const onShown = (listener: (book: ShownBook) => void): void => {
  listeners.push(listener);
};

export const tellShownBook = (book: ShownBook): void => {
  for (const listener of listeners) listener(book);
};

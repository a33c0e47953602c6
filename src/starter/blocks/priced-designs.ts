import type { CellRange } from '../cells/cell-names.ts';

/** The rows of the Pricing sheet's list of designs: its headers and its last line. */
export const PRICED = { headers: 10, last: 25 } as const;

const columns = { design: 0, cost: 1, price: 4 } as const;

/** The designs there, what one bar of each costs, or what is asked for it now. */
export const pricedDesigns = (column: keyof typeof columns): CellRange => ({
  startRow: PRICED.headers + 1,
  startColumn: columns[column],
  endRow: PRICED.last,
  endColumn: columns[column],
});

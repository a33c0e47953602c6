import type { Design } from '../book/book.ts';
import type { Day } from '../kernel/day.ts';
import type { Exact } from '../kernel/exact.ts';
import type { NewMove, StockChange } from './posting.ts';

/** Bars sold at one fair, or over the counter, on one day. */
export interface SellingDay {
  /** Made once when the form opens and kept through every retry. */
  readonly id: string;
  readonly soldOn: Day;
  /** Name of the fair, or "" for none. */
  readonly fair: string;
  readonly lines: readonly SoldLine[];
  /** Card and market fees of the whole day; shared out by takings. */
  readonly fees: Exact;
  readonly by: string;
}

export interface SoldLine {
  readonly design: Design;
  readonly bars: number;
  readonly priceEach: Exact;
}

/** A line to append to Sales. A correction has the bars negative and the id of the sale with ".R". */
export interface NewSale {
  readonly sale: string;
  readonly soldOn: Day;
  readonly design: string;
  readonly bars: number;
  readonly priceEach: Exact;
  readonly fair: string;
  readonly fees: Exact;
}

/** Everything that recording or taking back a selling day writes. */
export interface SalesPosting {
  readonly sales: readonly NewSale[];
  readonly moves: readonly NewMove[];
  readonly changes: readonly StockChange[];
}

/** What marks the id of a line that takes another back. */
export const TAKES_BACK = '.R';

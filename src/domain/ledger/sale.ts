import type { Design } from '../book/book.ts';
import type { BarSet, SellingPlace } from '../book/trade.ts';
import type { Tender } from '../book/words.ts';
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
  /** Sets sold beside them; each takes its bars and its packaging. */
  readonly sets?: readonly SoldSet[];
  /** Where they were sold; bars on consignment leave the place, all others the shelf. */
  readonly place?: SellingPlace;
  readonly tender?: Tender;
  /** Name of the partner who took the money. */
  readonly takenBy?: string;
  /** Card and market fees of the whole day; shared out by takings. */
  readonly fees: Exact;
  readonly by: string;
}

export interface SoldLine {
  readonly design: Design;
  readonly bars: number;
  readonly priceEach: Exact;
  /** Seconds of the design, not good bars. */
  readonly isSecond?: boolean;
}

export interface SoldSet {
  readonly set: BarSet;
  /** How many whole sets. */
  readonly sets: number;
}

/** A line to append to Sales. A correction has the bars negative and the id of the sale with ".R". */
export interface NewSale {
  readonly sale: string;
  readonly soldOn: Day;
  /** A design's name, or that of its seconds. */
  readonly design: string;
  readonly bars: number;
  readonly priceEach: Exact;
  readonly fair: string;
  readonly fees: Exact;
  readonly place: string;
  readonly tender: string;
  readonly takenBy: string;
}

/** Everything that recording or taking back a selling day writes. */
export interface SalesPosting {
  readonly sales: readonly NewSale[];
  readonly moves: readonly NewMove[];
  readonly changes: readonly StockChange[];
}

/** What marks the id of a line that takes another back. */
export const TAKES_BACK = '.R';

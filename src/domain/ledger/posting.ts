import type { Item } from '../book/book.ts';
import type { MoveReason } from '../book/words.ts';
import type { Day } from '../kernel/day.ts';
import type { Exact } from '../kernel/exact.ts';
import type { Shortage } from './take-stock.ts';

/** A line to append to the ledger, whose worth may not be known. */
export interface MoveLine {
  readonly entry: string;
  readonly when: Day;
  readonly reason: MoveReason;
  readonly item: Item;
  /** Signed, in the item's unit. */
  readonly quantity: Exact;
  readonly lot: string;
  /** Signed like the quantity, in whole smallest units of the currency unless sent; undefined leaves Value blank. */
  readonly value: Exact | undefined;
  readonly batch: string;
  readonly by: string;
  readonly note: string;
}

/** A line to append to the ledger, as every posting has it. */
export interface NewMove extends MoveLine {
  readonly value: Exact;
}

/** A line to append to Batches. */
export interface NewBatch {
  readonly batch: string;
  readonly poured: Day;
  /** "" where pieces were shaped ahead: 0 bars, and no design. */
  readonly design: string;
  readonly bars: Exact;
  readonly good: number;
  readonly seconds: number;
  /** Undefined where nobody knows; with the good and the seconds all bars started where known. */
  readonly lost: number | undefined;
  /** Undefined where nobody said, and no design says. */
  readonly minutes: Exact | undefined;
  readonly materialCost: Exact;
  /** Undefined where no bar came out good. */
  readonly costPerBar: Exact | undefined;
  /** Undefined where there are no bars. */
  readonly readyOn: Day | undefined;
  readonly state: string;
  readonly by: string;
  readonly note: string;
}

/** How the stock of one item changes. */
export interface StockChange {
  readonly item: Item;
  readonly before: Exact;
  readonly after: Exact;
}

/** Everything that recording one pour writes, and what the maker should see before it is written. */
export interface BatchPosting {
  readonly moves: readonly NewMove[];
  readonly batch: NewBatch;
  readonly changes: readonly StockChange[];
  /** Items the ledger was short of and that a count put right. */
  readonly countedIn: readonly Shortage[];
  /** Value of materials that ended in no bar, spare or leftover, since no bar or piece came out good; else 0. */
  readonly writtenOff: Exact;
}

/** Why a pour can't be posted: stock is short of these, and nobody said that the count is off. */
export interface ShortOfStock {
  readonly shortages: readonly Shortage[];
}

/** Ids in order: the batch's own id and a number of at least two digits. */
export function entryId(batch: string, number: number): string {
  return `${batch}.${String(number).padStart(2, '0')}`;
}

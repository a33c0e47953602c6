import type { Exact } from '../kernel/exact.ts';
import type { Item } from './book.ts';
import type { SellingWay } from './words.ts';

/** Where bars are sold; money in the Settings' currency, undefined where blank. */
export interface SellingPlace {
  readonly name: string;
  readonly sellsAs: SellingWay;
  /** Of the price the buyer paid. */
  readonly commissionPercent: Exact;
  readonly feePercent: Exact | undefined;
  readonly feeFixed: Exact | undefined;
  readonly postageEach: Exact;
  readonly leastBars: Exact | undefined;
  readonly taxPercent: Exact | undefined;
}

/** Bars sold together, with their packaging. */
export interface BarSet {
  readonly name: string;
  readonly lines: readonly SetLine[];
  /** Undefined where blank. */
  readonly price: Exact | undefined;
}

export interface SetLine {
  /** A design's bars or a packaging material. */
  readonly item: Item;
  /** In the item's unit, for one set. */
  readonly perSet: Exact;
}

export interface Partner {
  readonly name: string;
  /** Those of all partners add up to 100. */
  readonly sharePercent: Exact;
}

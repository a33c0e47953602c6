import type { Item, Lot, Move } from '../book/book.ts';
import { type Day, wholeDay } from '../kernel/day.ts';
import { type Exact, zero } from '../kernel/exact.ts';
import { compareLots } from '../kernel/names.ts';
import { landedUnitCost } from './lot-cost.ts';

/** Stock that came in together at one cost: a lot, or what one batch or count put on the shelf. */
export interface StockLayer {
  /** The lot's id; for soap and bars the batch's. */
  readonly lot: string;
  readonly came: Day;
  readonly bestBefore: Day | undefined;
  quantity: Exact;
  /** Undefined where the ledger gives no value. */
  readonly unitValue: Exact | undefined;
  /** What named this layer, for a message. */
  readonly entry: string;
  /** What `takeOff` left in it, in millionths, where `quantity` does not say so yet. */
  leftMillionths?: number | undefined;
}

/** A layer yet to be filled, whose price is worked out when it is first asked for: most are long used up. */
export class PricedLayer implements StockLayer {
  readonly lot: string;
  readonly came: Day;
  readonly bestBefore: Day | undefined;
  readonly entry: string;
  quantity = zero;
  leftMillionths: number | undefined = undefined;
  private price: (() => Exact | undefined) | undefined;
  private priced: Exact | undefined = undefined;

  constructor(
    { lot, came, bestBefore, entry }: Omit<StockLayer, 'quantity' | 'unitValue' | 'leftMillionths'>,
    price: () => Exact | undefined,
  ) {
    this.lot = lot;
    this.came = came;
    this.bestBefore = bestBefore;
    this.entry = entry;
    this.price = price;
  }

  get unitValue(): Exact | undefined {
    if (this.price !== undefined) this.priced = this.price();
    this.price = undefined;
    return this.priced;
  }
}

/** A layer to take from as one likes. A spread would not do: it leaves out what a class works out. */
export const copyOf = ({
  lot,
  came,
  bestBefore,
  quantity,
  unitValue,
  entry,
}: StockLayer): StockLayer => ({ lot, came, bestBefore, quantity, unitValue, entry });

/** What a lot puts on the shelf, yet to be filled. */
export const layerOfLot = (lot: Lot): PricedLayer =>
  new PricedLayer(
    { lot: lot.lot, came: lot.received, bestBefore: lot.bestBefore, entry: lot.lot },
    () => landedUnitCost(lot),
  );

/** Whether stock is past its best before on a day: it is good through the whole of its last one. */
export const isPast = (bestBefore: Day | undefined, day: Day): boolean =>
  bestBefore !== undefined && wholeDay(bestBefore) < wholeDay(day);

/** Earliest best before first, then what came first, then by name. */
export function pickOrder(a: StockLayer, b: StockLayer): number {
  return (
    (a.bestBefore ?? Infinity) - (b.bestBefore ?? Infinity) ||
    a.came - b.came ||
    compareLots(a.lot, b.lot)
  );
}

/** Soap and bars without a Lot are known by the batch that made them; material without one by no lot. */
export function madeBy(move: Move, item: Item): string {
  if (item.kind === 'material') return '';
  return move.batch === '' || move.reason === 'counted' ? move.entry : move.batch;
}

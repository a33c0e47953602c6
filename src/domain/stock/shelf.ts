import type { Day } from '../kernel/day.ts';
import { type Exact, exact, least, zero } from '../kernel/exact.ts';
import { nameKey } from '../kernel/names.ts';
import { inMillionths, ofMillionths, wholeMillionths } from '../kernel/tally.ts';
import { pickOrder, type StockLayer } from './layer.ts';

/** Quantity taken from one layer. */
export interface Pick {
  readonly lot: string;
  readonly bestBefore: Day | undefined;
  readonly quantity: Exact;
  readonly unitValue: Exact | undefined;
}

/** The layers of one item on one shelf, taken from by earliest best before, then age, then lot. */
export class Shelf {
  /** Taken beyond what was there; repaid from what comes in next. */
  owed: Exact = zero;
  /** In picking order; emptied layers stay, since what comes back to a lot has that lot's cost. */
  private readonly ordered: StockLayer[] = [];
  /** Layers before this place in picking order are empty. */
  private firstFilled = 0;
  private readonly byLot = new Map<string, StockLayer[]>();
  /** The same by each spelling met, since a lot is taken from again and again. */
  private readonly bySpelling = new Map<string, StockLayer[]>();
  /** Layers that have their `leftMillionths`. */
  private readonly counted: StockLayer[] = [];

  /** All layers in picking order, emptied ones too. */
  get layers(): readonly StockLayer[] {
    this.settle();
    return this.ordered;
  }

  /** Layers with stock in them, in picking order. */
  get filled(): StockLayer[] {
    return this.layers.slice(this.firstFilled).filter((layer) => layer.quantity.gt(0));
  }

  /** The layers of one lot, in picking order. */
  named(lot: string): readonly StockLayer[] {
    this.settle();
    return this.ofLot(lot);
  }

  put(layer: StockLayer): void {
    if (!this.owed.isZero()) {
      const repaid = least(layer.quantity, this.owed);
      this.owed = this.owed.minus(repaid);
      layer.quantity = layer.quantity.minus(repaid);
    }
    this.firstFilled = Math.min(this.firstFilled, insert(this.ordered, layer));
    const key = nameKey(layer.lot);
    const sameLot = this.byLot.get(key);
    if (sameLot === undefined) {
      const layers = [layer];
      this.byLot.set(key, layers);
      this.bySpelling.set(layer.lot, layers);
    } else insert(sameLot, layer);
  }

  /** `put` for a cell's number, which needs no decimal as long as it is only taken from by `takeOff`. */
  putNumber(layer: StockLayer, quantity: number): void {
    const millionths = this.owed.isZero() ? wholeMillionths(quantity) : undefined;
    if (millionths === undefined) {
      layer.quantity = exact(quantity);
    } else {
      layer.leftMillionths = millionths;
      this.counted.push(layer);
    }
    this.put(layer);
  }

  /** Takes from a named lot as far as it goes, then in picking order; what is not there is owed. */
  take(quantity: Exact, lotNamed: string): Pick[] {
    this.settle();
    const picks: Pick[] = [];
    let left = quantity;
    for (const layers of [this.ofLot(lotNamed), this.ordered]) {
      for (const layer of layers) {
        if (left.isZero()) break;
        const taken = least(layer.quantity, left);
        if (taken.lte(0)) continue;
        layer.quantity = layer.quantity.minus(taken);
        left = left.minus(taken);
        const { lot, bestBefore, unitValue } = layer;
        picks.push({ lot, bestBefore, quantity: taken, unitValue });
      }
    }
    this.owed = this.owed.plus(left);
    return picks;
  }

  /**
   * `take` for who does not ask what it took: a ledger of years takes a cell's number from the same
   * layer again and again, which is counted in whole millionths as long as the layer lasts.
   */
  takeOff(quantity: number, lot: string): void {
    const wanted = wholeMillionths(quantity);
    const layer = wanted === undefined ? undefined : this.nextLayer(lot);
    const left = layer === undefined ? undefined : this.leftIn(layer);
    if (wanted === undefined || layer === undefined || left === undefined || left < wanted) {
      this.take(exact(quantity), lot);
      return;
    }
    if (layer.leftMillionths === undefined) this.counted.push(layer);
    layer.leftMillionths = left - wanted;
  }

  private ofLot(lot: string): readonly StockLayer[] {
    if (lot === '') return [];
    const known = this.bySpelling.get(lot);
    if (known !== undefined) return known;
    const found = this.byLot.get(nameKey(lot));
    if (found !== undefined) this.bySpelling.set(lot, found);
    return found ?? [];
  }

  /** The layer to take from next: the first of the lot with stock in it, else the first of all. */
  private nextLayer(lot: string): StockLayer | undefined {
    const ofLot = this.ofLot(lot).find(isFilled);
    if (ofLot !== undefined) return ofLot;
    for (; this.firstFilled < this.ordered.length; this.firstFilled += 1) {
      const layer = this.ordered[this.firstFilled];
      if (layer !== undefined && isFilled(layer)) return layer;
    }
    return undefined;
  }

  private leftIn(layer: StockLayer): number | undefined {
    return layer.leftMillionths ?? inMillionths(layer.quantity);
  }

  private settle(): void {
    for (const layer of this.counted) {
      const { leftMillionths = 0 } = layer;
      // Most layers of a long history are used up.
      layer.quantity = leftMillionths === 0 ? zero : ofMillionths(leftMillionths);
      layer.leftMillionths = undefined;
    }
    this.counted.length = 0;
  }
}

const isFilled = ({ quantity, leftMillionths }: StockLayer): boolean =>
  leftMillionths === undefined ? quantity.gt(0) : leftMillionths > 0;

/** Puts a layer where it belongs in picking order, after its equals, and answers its place. */
function insert(layers: StockLayer[], layer: StockLayer): number {
  let [low, high] = [0, layers.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    const other = layers[middle];
    if (other !== undefined && pickOrder(layer, other) < 0) high = middle;
    else low = middle + 1;
  }
  layers.splice(low, 0, layer);
  return low;
}

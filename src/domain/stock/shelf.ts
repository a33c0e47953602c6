import type { Day } from '../kernel/day.ts';
import { type Exact, exact, least, zero } from '../kernel/exact.ts';
import { nameKey } from '../kernel/names.ts';
import { inMillionths, ofMillionths, wholeMillionths } from '../kernel/tally.ts';
import { LayerQueue } from './layer-queue.ts';
import type { StockLayer } from './layer.ts';

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
  private readonly all = new LayerQueue();
  private readonly byLot = new Map<string, LayerQueue>();
  /** The same by each spelling met, since a lot is taken from again and again. */
  private readonly bySpelling = new Map<string, LayerQueue>();
  /** Layers that have their `leftMillionths`. */
  private readonly counted: StockLayer[] = [];

  /** All layers in picking order, emptied ones too. */
  get layers(): readonly StockLayer[] {
    this.settle();
    return this.all.layers;
  }

  /** Layers with stock in them, in picking order. */
  get filled(): StockLayer[] {
    this.settle();
    return this.all.filled();
  }

  /** The layers of one lot, in picking order. */
  named(lot: string): readonly StockLayer[] {
    this.settle();
    return this.ofLot(lot)?.layers ?? [];
  }

  put(layer: StockLayer): void {
    if (!this.owed.isZero()) {
      const repaid = least(layer.quantity, this.owed);
      this.owed = this.owed.minus(repaid);
      layer.quantity = layer.quantity.minus(repaid);
    }
    this.all.insert(layer);
    const key = nameKey(layer.lot);
    let sameLot = this.byLot.get(key);
    if (sameLot === undefined) {
      sameLot = new LayerQueue();
      this.byLot.set(key, sameLot);
      this.bySpelling.set(layer.lot, sameLot);
    }
    sameLot.insert(layer);
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
    for (const queue of [this.ofLot(lotNamed), this.all]) {
      while (!left.isZero()) {
        const layer = queue?.next();
        if (layer === undefined) break;
        const taken = least(layer.quantity, left);
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
    const layer = wanted === undefined ? undefined : (this.ofLot(lot)?.next() ?? this.all.next());
    const left = layer === undefined ? undefined : this.leftIn(layer);
    if (wanted === undefined || layer === undefined || left === undefined || left < wanted) {
      this.take(exact(quantity), lot);
      return;
    }
    if (layer.leftMillionths === undefined) this.counted.push(layer);
    layer.leftMillionths = left - wanted;
  }

  private ofLot(lot: string): LayerQueue | undefined {
    if (lot === '') return undefined;
    const known = this.bySpelling.get(lot);
    if (known !== undefined) return known;
    const found = this.byLot.get(nameKey(lot));
    if (found !== undefined) this.bySpelling.set(lot, found);
    return found;
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

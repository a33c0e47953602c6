import type { Day } from '../kernel/day.ts';
import { type Exact, least, zero } from '../kernel/exact.ts';
import { compareNames, nameKey } from '../kernel/names.ts';

/** Stock that came in together at one cost: a lot, or what one batch or count put on the shelf. */
export interface Layer {
  /** The lot's id; for soap and bars the batch's. */
  readonly lot: string;
  readonly came: Day;
  readonly bestBefore: Day | undefined;
  quantity: Exact;
  /** Undefined where the ledger gives no value. */
  readonly unitValue: Exact | undefined;
  /** What named this layer, for a message. */
  readonly entry: string;
}

/** Quantity taken from one layer. */
export interface Pick {
  readonly lot: string;
  readonly quantity: Exact;
  readonly unitValue: Exact | undefined;
}

/** The layers of one item on one shelf, taken from by earliest best before, then age, then lot. */
export class Shelf {
  readonly layers: Layer[] = [];
  /** Taken beyond what was there; repaid from what comes in next. */
  owed: Exact = zero;

  put(layer: Layer): void {
    const repaid = least(layer.quantity, this.owed);
    this.owed = this.owed.minus(repaid);
    layer.quantity = layer.quantity.minus(repaid);
    const at = this.layers.findIndex((other) => pickOrder(layer, other) < 0);
    this.layers.splice(at < 0 ? this.layers.length : at, 0, layer);
  }

  /** Takes from a named lot as far as it goes, then in picking order; what is not there is owed. */
  take(quantity: Exact, lot: string): Pick[] {
    const named =
      lot === '' ? [] : this.layers.filter((layer) => nameKey(layer.lot) === nameKey(lot));
    const picks: Pick[] = [];
    let left = quantity;
    for (const layer of [...named, ...this.layers]) {
      if (left.isZero()) break;
      const taken = least(layer.quantity, left);
      if (taken.lte(0)) continue;
      layer.quantity = layer.quantity.minus(taken);
      left = left.minus(taken);
      picks.push({ lot: layer.lot, quantity: taken, unitValue: layer.unitValue });
    }
    this.owed = this.owed.plus(left);
    return picks;
  }

  /** Layers with stock in them, in picking order. */
  get filled(): Layer[] {
    return this.layers.filter((layer) => layer.quantity.gt(0));
  }
}

function pickOrder(a: Layer, b: Layer): number {
  return (
    (a.bestBefore ?? Infinity) - (b.bestBefore ?? Infinity) ||
    a.came - b.came ||
    compareNames(a.lot, b.lot) ||
    0
  );
}

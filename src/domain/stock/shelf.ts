import type { Day } from '../kernel/day.ts';
import { type Exact, exact, least, zero } from '../kernel/exact.ts';
import { compareNames, nameKey } from '../kernel/names.ts';
import { inMillionths, ofMillionths, wholeMillionths } from '../kernel/tally.ts';

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
  /** Taken beyond what was there; repaid from what comes in next. */
  owed: Exact = zero;
  /** In picking order; emptied layers stay, since what comes back to a lot has that lot's cost. */
  private readonly ordered: Layer[] = [];
  private readonly byLot = new Map<string, Layer[]>();
  /** What `takeOff` left, in millionths, of layers whose `quantity` does not say so yet. */
  private readonly left = new Map<Layer, number>();

  /** All layers in picking order, emptied ones too. */
  get layers(): readonly Layer[] {
    this.settle();
    return this.ordered;
  }

  /** Layers with stock in them, in picking order. */
  get filled(): Layer[] {
    return this.layers.filter((layer) => layer.quantity.gt(0));
  }

  /** The layers of one lot, in picking order. */
  named(lot: string): readonly Layer[] {
    this.settle();
    return this.ofLot(lot);
  }

  put(layer: Layer): void {
    if (!this.owed.isZero()) {
      const repaid = least(layer.quantity, this.owed);
      this.owed = this.owed.minus(repaid);
      layer.quantity = layer.quantity.minus(repaid);
    }
    insert(this.ordered, layer);
    const key = nameKey(layer.lot);
    const sameLot = this.byLot.get(key);
    if (sameLot === undefined) this.byLot.set(key, [layer]);
    else insert(sameLot, layer);
  }

  /** Takes from a named lot as far as it goes, then in picking order; what is not there is owed. */
  take(quantity: Exact, lot: string): Pick[] {
    this.settle();
    const picks: Pick[] = [];
    let left = quantity;
    for (const layers of [this.ofLot(lot), this.ordered]) {
      for (const layer of layers) {
        if (left.isZero()) break;
        const taken = least(layer.quantity, left);
        if (taken.lte(0)) continue;
        layer.quantity = layer.quantity.minus(taken);
        left = left.minus(taken);
        picks.push({ lot: layer.lot, quantity: taken, unitValue: layer.unitValue });
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
    const layer = wanted === undefined ? undefined : this.firstFilled(lot);
    const left = layer === undefined ? undefined : this.leftIn(layer);
    if (wanted === undefined || layer === undefined || left === undefined || left < wanted)
      this.take(exact(quantity), lot);
    else this.left.set(layer, left - wanted);
  }

  private ofLot(lot: string): readonly Layer[] {
    return lot === '' ? [] : (this.byLot.get(nameKey(lot)) ?? []);
  }

  private firstFilled(lot: string): Layer | undefined {
    const isFilled = (layer: Layer): boolean => {
      const left = this.left.get(layer);
      return left === undefined ? layer.quantity.gt(0) : left > 0;
    };
    return this.ofLot(lot).find(isFilled) ?? this.ordered.find(isFilled);
  }

  private leftIn(layer: Layer): number | undefined {
    return this.left.get(layer) ?? inMillionths(layer.quantity);
  }

  private settle(): void {
    for (const [layer, left] of this.left) layer.quantity = ofMillionths(left);
    this.left.clear();
  }
}

/** Puts a layer where it belongs in picking order, after its equals. */
function insert(layers: Layer[], layer: Layer): void {
  let [low, high] = [0, layers.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    const other = layers[middle];
    if (other !== undefined && pickOrder(layer, other) < 0) high = middle;
    else low = middle + 1;
  }
  layers.splice(low, 0, layer);
}

function pickOrder(a: Layer, b: Layer): number {
  return (
    (a.bestBefore ?? Infinity) - (b.bestBefore ?? Infinity) ||
    a.came - b.came ||
    compareNames(a.lot, b.lot) ||
    0
  );
}

import { pickOrder, type StockLayer } from './layer.ts';

/**
 * Layers in picking order, to take from the first that has stock. Emptied layers stay, since what comes
 * back to a lot has that lot's cost, but nobody looks through them again: a ledger of years empties most.
 */
export class LayerQueue {
  readonly layers: StockLayer[] = [];
  /** Layers before this place are empty. */
  private firstFilled = 0;

  insert(layer: StockLayer): void {
    let [low, high] = [0, this.layers.length];
    while (low < high) {
      const middle = (low + high) >>> 1;
      const other = this.layers[middle];
      if (other !== undefined && pickOrder(layer, other) < 0) high = middle;
      else low = middle + 1;
    }
    this.layers.splice(low, 0, layer);
    this.firstFilled = Math.min(this.firstFilled, low);
  }

  /** The layer to take from next. */
  next(): StockLayer | undefined {
    for (; this.firstFilled < this.layers.length; this.firstFilled += 1) {
      const layer = this.layers[this.firstFilled];
      if (layer !== undefined && isFilled(layer)) return layer;
    }
    return undefined;
  }

  filled(): StockLayer[] {
    return this.layers.slice(this.firstFilled).filter(isFilled);
  }
}

const isFilled = ({ quantity, leftMillionths }: StockLayer): boolean =>
  leftMillionths === undefined ? quantity.gt(0) : leftMillionths > 0;

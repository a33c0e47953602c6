import { type Exact, sum, zero } from '../kernel/exact.ts';
import { Tally } from '../kernel/tally.ts';
import type { StockLayer } from './layer.ts';
import type { Pick } from './shelf.ts';

/** What the layers of a shelf are worth at their own costs, kept up as they come and go. */
export class LayersWorth {
  private readonly tally = new Tally();
  private known = zero;
  /** On hand without a value. */
  private unvalued = zero;

  /** A layer that came in, once it has repaid what was owed. */
  cameIn(quantity: number, { quantity: left, unitValue }: StockLayer): void {
    this.tally.add(quantity);
    if (unitValue === undefined) this.unvalued = this.unvalued.plus(left);
    else this.known = this.known.plus(left.times(unitValue));
  }

  wentOut(quantity: number, picks: readonly Pick[]): void {
    this.tally.add(-quantity);
    const worth = ({ quantity: taken, unitValue = zero }: Pick): Exact => taken.times(unitValue);
    this.known = this.known.minus(sum(picks.map(worth)));
    const without = picks.filter(({ unitValue }) => unitValue === undefined);
    this.unvalued = this.unvalued.minus(sum(without.map((pick) => pick.quantity)));
  }

  /** Value ÷ on hand; `otherwise` with nothing on hand; undefined where some of it has no value. */
  unitCost(otherwise: Exact | undefined): Exact | undefined {
    if (this.tally.sign() <= 0) return otherwise;
    return this.unvalued.isZero() ? this.known.div(this.tally.total()) : undefined;
  }
}

import { type Exact, notBelowZero, zero } from '../kernel/exact.ts';
import { Tally } from '../kernel/tally.ts';

/**
 * All stock of one item at its moving average. What is taken leaves the average as it is, so its value
 * is worked out only when something comes in, runs out, or is asked for.
 */
export class Pool {
  private readonly tally = new Tally();
  /** Quantity and value as they stood when the average last changed. */
  private quantityThen = zero;
  private valueThen = zero;

  get quantity(): Exact {
    return this.tally.total();
  }

  /** Money, by the moving average. */
  get value(): Exact {
    const { quantity } = this;
    return quantity.eq(this.quantityThen)
      ? this.valueThen
      : this.valueThen.times(quantity).div(this.quantityThen);
  }

  /** Undefined with nothing on hand. */
  get unitCost(): Exact | undefined {
    return this.tally.sign() > 0 ? this.valueThen.div(this.quantityThen) : undefined;
  }

  putIn(quantity: number, value: Exact, unitValue: Exact): void {
    const before = this.value;
    const wasOwed = this.tally.sign() < 0;
    this.tally.add(quantity);
    // What was taken before it was there is repaid at the new cost, as on the FIFO shelf: a guess at
    // its cost must not linger.
    this.become(wasOwed ? this.quantity.times(unitValue) : before.plus(value));
  }

  /**
   * Takes at the average, or what is there for the `written` value where one is given; with nothing on
   * hand at `newest`, the latest cost known.
   */
  takeOut(quantity: number, newest: Exact, written?: Exact): void {
    const before = this.value;
    const cost = this.tally.sign() > 0 ? undefined : newest;
    this.tally.add(-quantity);
    if (written !== undefined && this.tally.sign() >= 0) {
      this.become(notBelowZero(before.minus(written)));
      return;
    }
    if (cost !== undefined) this.become(this.quantity.times(cost));
    else if (this.tally.sign() <= 0) this.become(this.value);
  }

  private become(value: Exact): void {
    this.quantityThen = this.quantity;
    // An empty shelf is worth nothing, whatever the division before it left over.
    this.valueThen = this.quantityThen.isZero() ? zero : value;
  }
}

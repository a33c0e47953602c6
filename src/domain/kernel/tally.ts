import { Exact, exact } from './exact.ts';

/** Millionths: finer than any scale or dropper. */
const SCALE = 1_000_000;
/** A cell shows 15 digits; a number with more is read as `exact()` reads it. */
const LARGEST_CELL = 1e15 - 1;
const LARGEST_WHOLE = Number.MAX_SAFE_INTEGER;

/**
 * An exact running sum of cell numbers, fast enough for a ledger of years. Numbers of up to six
 * decimals are summed as whole millionths; any other goes to an exact decimal beside them.
 * Held equal to plain exact sums by tests/domain/kernel/tally.test.ts.
 */
export class Tally {
  private millionths = 0;
  private rest: Exact | undefined;

  /** Adds a cell's number, read as the decimal it shows. */
  add(cellNumber: number): void {
    const scaled = Math.round(cellNumber * SCALE);
    const next = this.millionths + scaled;
    if (
      scaled / SCALE === cellNumber &&
      Math.abs(scaled) <= LARGEST_CELL &&
      Math.abs(next) <= LARGEST_WHOLE
    ) {
      this.millionths = next;
    } else {
      this.rest = (this.rest ?? new Exact(0)).plus(exact(cellNumber));
    }
  }

  total(): Exact {
    const whole = new Exact(this.millionths).div(SCALE);
    return this.rest === undefined ? whole : whole.plus(this.rest);
  }
}

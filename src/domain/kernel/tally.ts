import { Exact, exact } from './exact.ts';

/** Millionths: finer than any scale or dropper. */
const SCALE = 1_000_000;
const MILLIONTH = new Exact('0.000001');
/** A cell shows 15 digits; a number with more is read as `exact()` reads it. */
const LARGEST_CELL = 1e15 - 1;
const LARGEST_WHOLE = Number.MAX_SAFE_INTEGER;

/** A cell's number as whole millionths, where that is just what it shows; else undefined. */
export function wholeMillionths(cellNumber: number): number | undefined {
  const scaled = Math.round(cellNumber * SCALE);
  return scaled / SCALE === cellNumber && Math.abs(scaled) <= LARGEST_CELL ? scaled : undefined;
}

/** An exact decimal as whole millionths, where it is that many and they are few enough to count. */
export function inMillionths(value: Exact): number | undefined {
  const scaled = value.times(SCALE);
  return scaled.isInteger() && scaled.abs().lte(LARGEST_CELL) ? scaled.toNumber() : undefined;
}

/** So many millionths as an exact decimal. */
export function ofMillionths(count: number): Exact {
  return new Exact(count).times(MILLIONTH);
}

/** An exact quantity: as millionths where it is whole in them, so that a decimal is made only when it is asked for. */
export type Count = number | Exact;

export const exactOf = (count: Count): Exact =>
  typeof count === 'number' ? ofMillionths(count) : count;

export function plus(a: Count, b: Count): Count {
  const sum = typeof a === 'number' && typeof b === 'number' ? a + b : undefined;
  if (sum !== undefined && Math.abs(sum) <= LARGEST_WHOLE) return sum;
  return exactOf(a).plus(exactOf(b));
}

/** The sum of the squares of some counts. */
export function sumOfSquares(counts: readonly Count[]): Exact {
  let [millionths, rest] = [0n, new Exact(0)];
  for (const count of counts) {
    if (typeof count === 'number') millionths += BigInt(count) ** 2n;
    else rest = rest.plus(count.pow(2));
  }
  return new Exact(millionths.toString()).div(SCALE).div(SCALE).plus(rest);
}

/**
 * An exact running sum of cell numbers, fast enough for a ledger of years. Numbers of up to six
 * decimals are summed as whole millionths; any other goes to an exact decimal beside them.
 * Held equal to plain exact sums by tests/laws/numbers.test.ts.
 */
export class Tally {
  private millionths = 0;
  private rest: Exact | undefined;

  /** Adds a cell's number, read as the decimal it shows. */
  add(cellNumber: number): void {
    const scaled = wholeMillionths(cellNumber);
    const next = this.millionths + (scaled ?? 0);
    if (scaled !== undefined && Math.abs(next) <= LARGEST_WHOLE) this.millionths = next;
    else this.rest = (this.rest ?? new Exact(0)).plus(exact(cellNumber));
  }

  total(): Exact {
    const whole = ofMillionths(this.millionths);
    return this.rest === undefined ? whole : whole.plus(this.rest);
  }

  get count(): Count {
    return this.rest === undefined ? this.millionths : this.total();
  }

  /** 1, 0 or -1, as the sum is above, at or below nothing. */
  sign(): number {
    if (this.rest === undefined) return Math.sign(this.millionths);
    return this.total().comparedTo(0);
  }
}

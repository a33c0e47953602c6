import { Decimal as DecimalJs } from 'decimal.js';

/**
 * Exact decimals: 40 significant digits, halves rounded away from zero as shops do (common practice).
 * A clone, so that no other code's settings can change ours.
 */
export const Exact = DecimalJs.clone({
  precision: 40,
  rounding: DecimalJs.ROUND_HALF_UP,
  toExpNeg: -40,
  toExpPos: 40,
});
export type Exact = DecimalJs;

export const zero: Exact = new Exact(0);
export const one: Exact = new Exact(1);
export const hundred: Exact = new Exact(100);

/** A spreadsheet keeps 15 significant digits; what binary adds beyond them is noise. */
const CELL_DIGITS = 15;

/** The decimal that a cell's number shows: `exact(0.1 + 0.2)` is 0.3. */
export function exact(cellNumber: number): Exact {
  // A whole number shows itself; adding 0 makes a plain 0 of -0.
  if (Number.isInteger(cellNumber) && Math.abs(cellNumber) < 10 ** CELL_DIGITS)
    return new Exact(cellNumber + 0);
  return new Exact(cellNumber.toPrecision(CELL_DIGITS));
}

/** The number to put in a cell. */
export function toCell(value: Exact): number {
  // Adding 0 turns the -0 of an exact subtraction into a plain 0.
  return value.toNumber() + 0;
}

/** The sum of figures; of figures of one kind it is one of that kind. */
export function sum<T extends Exact>(values: Iterable<T>): T {
  let total: Exact = zero;
  // Much that is summed is nothing, or one thing alone.
  for (const value of values) {
    if (!value.isZero()) total = total.isZero() ? value : total.plus(value);
  }
  // A plain figure but for its type.
  return total as T;
}

/** Adds a value to what a map has under a key so far. */
export function addTo<K, T extends Exact>(totals: Map<K, T>, key: K, value: T): void {
  // Of one kind both, as the map's type says.
  totals.set(key, (totals.get(key)?.plus(value) ?? value) as T);
}

/** Rounds up to a whole multiple of `step`; a step of 0 leaves the value as it is. */
export function roundUpTo(value: Exact, step: Exact): Exact {
  return step.isZero() ? value : divideUp(value, step).times(step);
}

/** The nearest whole multiple of `step`, which is above 0. */
export function roundTo(value: Exact, step: Exact): Exact {
  return value.div(step).round().times(step);
}

/** How many whole times `divisor`, which is above 0, takes to reach `value`; no digits beyond are worked out. */
export function divideUp(value: Exact, divisor: Exact): Exact {
  const whole = value.divToInt(divisor);
  return whole.times(divisor).lt(value) ? whole.plus(one) : whole;
}

export function least(a: Exact, b: Exact): Exact {
  return a.lte(b) ? a : b;
}

/** The value, or 0 where it is negative. */
export function notBelowZero(value: Exact): Exact {
  return value.isNegative() ? zero : value;
}

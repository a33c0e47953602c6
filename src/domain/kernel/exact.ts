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
  return new Exact(cellNumber.toPrecision(CELL_DIGITS));
}

/** The number to put in a cell. */
export function toCell(value: Exact): number {
  // Adding 0 turns the -0 of an exact subtraction into a plain 0.
  return value.toNumber() + 0;
}

export function sum(values: Iterable<Exact>): Exact {
  let total = zero;
  for (const value of values) total = total.plus(value);
  return total;
}

/** Rounds up to a whole multiple of `step`; a step of 0 leaves the value as it is. */
export function roundUpTo(value: Exact, step: Exact): Exact {
  return step.isZero() ? value : value.div(step).ceil().times(step);
}

export function least(a: Exact, b: Exact): Exact {
  return a.lte(b) ? a : b;
}

/** The value, or 0 where it is negative. */
export function notBelowZero(value: Exact): Exact {
  return value.isNegative() ? zero : value;
}

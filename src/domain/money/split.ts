import { Exact, sum, zero } from '../kernel/exact.ts';

/**
 * Splits a whole number of units among shares by the largest remainder (Hamilton's method): parts
 * are whole, sum to the total exactly, and each is within one unit of its exact share. Ties go to
 * the earlier share; all-zero shares split evenly. Shares must not be negative.
 */
export function splitUnits(total: Exact, shares: readonly Exact[]): Exact[] {
  if (shares.length === 0) return [];
  const whole = sum(shares);
  const weights = whole.isZero() ? shares.map(() => new Exact(1)) : shares;
  const weight = whole.isZero() ? new Exact(shares.length) : whole;
  const quotas = weights.map((share) => total.times(share).div(weight));
  const floors = quotas.map((quota) => quota.floor());
  let left = total.minus(sum(floors)).toNumber();
  const byRemainder = quotas
    .map((quota, index) => ({ index, remainder: quota.minus(floors[index] ?? zero) }))
    .sort((a, b) => b.remainder.comparedTo(a.remainder) || a.index - b.index);
  for (const { index } of byRemainder) {
    if (left <= 0) break;
    floors[index] = (floors[index] ?? zero).plus(1);
    left -= 1;
  }
  return floors;
}

/** The same for an amount of any number of decimals: parts are whole multiples of 10^-decimals. */
export function splitAmount(total: Exact, shares: readonly Exact[], decimals: number): Exact[] {
  const unit = new Exact(10).pow(-decimals);
  return splitUnits(total.div(unit).round(), shares).map((part) => part.times(unit));
}

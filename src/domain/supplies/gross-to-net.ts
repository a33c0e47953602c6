import { Exact, roundUpTo, zero } from '../kernel/exact.ts';

/** One span of time in a plan: a day or a week. */
export interface Bucket {
  /** Wanted in it. */
  readonly gross: Exact;
  /** Already ordered and coming in it. */
  readonly receipts: Exact;
  /** Going out of date before it can be used. */
  readonly losses: Exact;
}

export interface NetBucket {
  /** On hand at its end, planned receipts with it; never below 0. */
  readonly projected: Exact;
  /** Still missing after stock and what is coming. */
  readonly net: Exact;
  /** What must come in it to cover the missing. */
  readonly planned: Exact;
}

/**
 * Nets what is wanted against stock, span by span in order of time (the textbook gross-to-net table of
 * material requirements planning). Planned receipts come in whole multiples of `lot`; 0 is lot for lot.
 */
export function grossToNet(
  onHand: Exact,
  buckets: readonly Bucket[],
  lot: Exact = zero,
): NetBucket[] {
  let stock = onHand;
  return buckets.map(({ gross, receipts, losses }) => {
    const left = stock.plus(receipts).minus(losses).minus(gross);
    const net = Exact.max(zero, left.neg());
    const planned = roundUpTo(net, lot);
    stock = left.plus(planned);
    return { projected: stock, net, planned };
  });
}

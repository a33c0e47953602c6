import type { CountDemand } from './count-demand.ts';

/** What one unit is worth: sold, or left over. */
export interface Stakes {
  /** Earned with one that is sold (Cu, the cost of one too few). */
  readonly earned: number;
  /** Lost with one that is left over (Co, the cost of one too many). */
  readonly lost: number;
}

/** What bringing so many means. */
export interface Brought {
  readonly bring: number;
  /** The chance that demand reaches it, in percent. */
  readonly sellsOutPercent: number;
  readonly expectedSold: number;
  readonly expectedProfit: number;
}

/** Where nothing is lost with one too many, more is always as good: it stops at this chance to be enough. */
const SURE_ENOUGH = 0.999;

/** The most worth bringing: the least number that is enough with a chance of Cu ÷ (Cu + Co) (the newsvendor's rule). */
export function bestToBring(demand: CountDemand, { earned, lost }: Stakes): number {
  if (earned <= 0) return 0;
  return demand.enoughFor(Math.min(SURE_ENOUGH, earned / (earned + lost)));
}

/** What to expect of bringing so many. */
export function bringing(demand: CountDemand, { earned, lost }: Stakes, bring: number): Brought {
  const expectedSold = demand.expectedSold(bring);
  return {
    bring,
    sellsOutPercent: 100 * (1 - demand.atMost(bring - 1)),
    expectedSold,
    expectedProfit: earned * expectedSold - lost * (bring - expectedSold),
  };
}

import type { Book, Design, Fair, Sale } from '../book/book.ts';
import { type Day, wholeDay } from '../kernel/day.ts';
import { oncePer } from '../kernel/once-per.ts';
import { nameKey } from '../kernel/names.ts';
import { CountDemand } from './count-demand.ts';

/** Fairs before another at which something was sold, with the bars of each design. */
export interface PastFairs {
  readonly fairs: readonly PastFair[];
  /** First day on which a design was sold, anywhere. */
  readonly firstSold: ReadonlyMap<Design, Day>;
}

interface PastFair {
  readonly fair: Fair;
  readonly bars: ReadonlyMap<Design, number>;
}

/** Where hours are blank on either side, a past fair counts as it was. */
const scaleTo = (fair: Fair, past: Fair): number =>
  (fair.hours ?? 0) > 0 && (past.hours ?? 0) > 0 ? (fair.hours ?? 1) / (past.hours ?? 1) : 1;

/** The fairs that opened before one and sold anything, in order of time. */
export function pastFairs(book: Book, before: Fair): PastFairs {
  const { byFair, firstSold } = soldAt(book);
  const fairs = [...book.fairs.values()]
    .filter(({ opens }) => wholeDay(opens) < wholeDay(before.opens))
    .map((fair) => ({ fair, bars: byFair.get(nameKey(fair.fair)) ?? new Map<Design, number>() }))
    .filter(({ bars }) => [...bars.values()].some((number) => number > 0))
    .sort((a, b) => a.fair.opens - b.fair.opens);
  return { fairs, firstSold };
}

const soldAt = oncePer(({ sales }: Book) => {
  const byFair = new Map<string, Map<Design, number>>();
  const firstSold = new Map<Design, Day>();
  for (const sale of sales) {
    if (sale.bars > 0)
      firstSold.set(sale.design, Math.min(sale.soldOn, firstSold.get(sale.design) ?? Infinity));
    if (sale.fair !== '') addBars(byFair, sale);
  }
  return { byFair, firstSold };
});

function addBars(byFair: Map<string, Map<Design, number>>, { fair, design, bars }: Sale): void {
  const key = nameKey(fair);
  const known = byFair.get(key) ?? new Map<Design, number>();
  known.set(design, (known.get(design) ?? 0) + bars);
  byFair.set(key, known);
}

/**
 * What a design sold at each past fair, as for the hours of this one. Fairs before it was first sold say nothing of
 * it: it was not there. At the others none sold is none asked for.
 */
export function soldAtFairs(design: Design, fair: Fair, { fairs, firstSold }: PastFairs): number[] {
  const first = firstSold.get(design) ?? Infinity;
  return fairs
    .filter((past) => (past.bars.get(design) ?? 0) > 0 || wholeDay(past.fair.opens) >= first)
    .map((past) => Math.max(0, past.bars.get(design) ?? 0) * scaleTo(fair, past.fair));
}

/** Mean and sample variance (n − 1) of what was sold; the variance of a single fair is taken for its mean. */
export function demandFrom(sold: readonly number[]): CountDemand {
  const mean = sold.reduce((total, each) => total + each, 0) / sold.length;
  const squares = sold.reduce((total, each) => total + (each - mean) ** 2, 0);
  return new CountDemand(mean, sold.length > 1 ? squares / (sold.length - 1) : mean);
}

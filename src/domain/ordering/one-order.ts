import { cheapestPacks, costOfPacks, type Millionths, type PackPrices } from './pack-prices.ts';

/** What bringing one order costs, and from which goods on it is free. */
export interface Carriage {
  readonly carriage: Millionths;
  /** Infinity where it never is. */
  readonly freeFrom: Millionths;
}

/** Packs of one material that an order must hold, more than none. */
export interface Needed {
  readonly prices: PackPrices;
  readonly packs: number;
}

export interface OneOrder {
  /** For each of what is needed. */
  readonly packs: readonly number[];
  readonly goods: Millionths;
  readonly carriage: Millionths;
}

export const costOfOrder = ({ goods, carriage }: OneOrder): Millionths => goods + carriage;

/**
 * The cheapest single order that holds at least what is needed: each material at its cheapest number of packs, and
 * with carriage, or with the least more by which the goods reach free carriage where that costs less.
 */
export function cheapestOrder(needed: readonly Needed[], terms: Carriage): OneOrder {
  const packs = needed.map((each) => cheapestPacks(each.prices, each.packs));
  const goods = goodsOf(needed, packs);
  if (goods >= terms.freeFrom) return { packs, goods, carriage: 0 };
  const more = leastMore(needed, packs, terms.freeFrom - goods, terms.carriage);
  if (more === undefined) return { packs, goods, carriage: terms.carriage };
  return { packs: more, goods: goodsOf(needed, more), carriage: 0 };
}

const goodsOf = (needed: readonly Needed[], packs: readonly number[]): Millionths =>
  needed.reduce((sum, { prices }, at) => sum + costOfPacks(prices, packs[at] ?? 0), 0);

/** Numbers of packs that cost at least `missing` more and less than `below`, as little as can be; undefined where none do. */
function leastMore(
  needed: readonly Needed[],
  packs: readonly number[],
  missing: Millionths,
  below: Millionths,
): readonly number[] | undefined {
  if (missing >= below) return undefined;
  // Every sum of more money below the carriage that can be reached, with one way to it.
  let reached = new Map<Millionths, readonly number[]>([[0, []]]);
  needed.forEach(({ prices }, at) => {
    const choices = dearer(prices, packs[at] ?? 0, below);
    const next = new Map<Millionths, readonly number[]>();
    for (const [sum, way] of reached)
      for (const [more, number] of choices)
        if (sum + more < below && !next.has(sum + more)) next.set(sum + more, [...way, number]);
    reached = next;
  });
  const best = [...reached.keys()].filter((sum) => sum >= missing).reduce(smaller, Infinity);
  return reached.get(best);
}

const smaller = (a: number, b: number): number => Math.min(a, b);

/** Numbers of packs with what each costs more than `packs`, as long as that is below a limit. */
function dearer(
  prices: PackPrices,
  packs: number,
  below: Millionths,
): [more: Millionths, packs: number][] {
  const base = costOfPacks(prices, packs);
  const found: [Millionths, number][] = [[0, packs]];
  // Without a price no number of packs brings an order nearer to free carriage.
  const dearest = prices.at(packs) ?? 0;
  if (dearest === 0) return found;
  const last = Math.max(packs, ...prices.steps) + Math.ceil((base + below) / lowest(prices, packs));
  for (let number = packs + 1; number <= last; number += 1) {
    const more = costOfPacks(prices, number) - base;
    if (more > 0 && more < below) found.push([more, number]);
  }
  return found;
}

/** The lowest price above nothing that an order of so many packs or more may have. */
function lowest(prices: PackPrices, packs: number): Millionths {
  const all = [packs, ...prices.steps].map((number) => prices.at(number) ?? 0);
  return Math.min(...all.filter((price) => price > 0));
}

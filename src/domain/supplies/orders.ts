import type { Material } from '../book/book.ts';
import type { Day } from '../kernel/day.ts';
import { Exact, one, toCell, zero } from '../kernel/exact.ts';

/** What is missing on a day. */
export interface ShortOn {
  readonly day: Day;
  readonly quantity: Exact;
}

/** One order at the supplier. */
export interface Order {
  /** Last day to place it. */
  readonly orderBy: Day;
  readonly needBy: Day;
  readonly packs: Exact;
  /** Undefined where the pack has no price. */
  readonly cost: Exact | undefined;
}

/** Days between ordering and using: the lead time, and Buffer days in hand. */
export function daysAhead({ leadDays }: Material, bufferDays: number): number {
  return Math.ceil(toCell(leadDays ?? zero)) + bufferDays;
}

/**
 * Whole packs for the shortages, in order of time: what a pack holds beyond one shortage goes to the
 * next, and an order smaller than the supplier's least joins the one before it, so that never more is
 * bought than all shortages take in packs, or the least. Empty where the pack size is not known.
 */
export function ordersFor(
  material: Material,
  shortages: readonly ShortOn[],
  bufferDays: number,
): Order[] {
  const { packSize, packPrice, leastPacks } = material;
  if (packSize === undefined) return [];
  const least = Exact.max(leastPacks ?? one, one);
  const ahead = daysAhead(material, bufferDays);
  const packsInAll = shortages
    .reduce((sum, { quantity }) => sum.plus(quantity), zero)
    .div(packSize)
    .ceil();
  const orders: { needBy: Day; packs: Exact }[] = [];
  let missing = zero;
  let ordered = zero;
  for (const { day, quantity } of shortages) {
    missing = missing.plus(quantity);
    const more = missing.div(packSize).ceil().minus(ordered);
    if (more.lte(0)) continue;
    const last = orders.at(-1);
    // Too few packs are left for a further order: they come with the one before.
    const joins = last !== undefined && packsInAll.minus(ordered).lt(least);
    const packs = joins ? more : Exact.max(more, least);
    if (joins) last.packs = last.packs.plus(packs);
    else orders.push({ needBy: day, packs });
    ordered = ordered.plus(packs);
  }
  return orders.map(({ needBy, packs }) => ({
    orderBy: needBy - ahead,
    needBy,
    packs,
    cost: packPrice?.times(packs),
  }));
}

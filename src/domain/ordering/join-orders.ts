import type { Day } from '../kernel/day.ts';
import {
  type Carriage,
  cheapestOrder,
  costOfOrder,
  type Needed,
  type OneOrder,
} from './one-order.ts';
import type { Millionths, PackPrices } from './pack-prices.ts';

/** Something missing of a material, with the days on which it may be ordered. */
export interface Lack {
  /** In the material's unit. */
  readonly quantity: number;
  /** Last day to order it. */
  readonly orderBy: Day;
  /** First day on which what is ordered still keeps until it is needed; -Infinity where nothing says. */
  readonly notBefore: Day;
}

/** A material with what is missing of it, in order of Order by. */
export interface Wanted {
  readonly prices: PackPrices;
  /** In the material's unit. */
  readonly packSize: number;
  readonly lacks: readonly Lack[];
}

export interface PlacedOrder extends OneOrder {
  readonly day: Day;
  /** Which of those wanted it holds, beside `packs`. */
  readonly of: readonly number[];
}

/**
 * The orders at one supplier that cost least in all, the latest among equals: all materials in common orders, or each
 * by itself with what falls on one day joined, whichever is cheaper. So it never costs more than ordering each alone.
 * Where everything keeps and larger orders have no dearer packs, no other orders cost less (held by trying all).
 */
export function joinOrders(wanted: readonly Wanted[], terms: Carriage): PlacedOrder[] {
  const together = cheapestSpans(wanted, [...wanted.keys()], terms);
  const apart = joinedByDay(
    wanted.flatMap((_, at) => cheapestSpans(wanted, [at], terms)),
    terms,
  );
  const best = isBetter(worthOf(apart), worthOf(together)) ? apart : together;
  return best.filter(({ of }) => of.length > 0);
}

export const costOfOrders = (orders: readonly PlacedOrder[]): Millionths =>
  orders.reduce((sum, order) => sum + costOfOrder(order), 0);

/** What it costs, and how late the money leaves: a sum of money × days. */
interface Worth {
  readonly cost: Millionths;
  readonly lateness: number;
}

const isBetter = (a: Worth, b: Worth): boolean =>
  a.cost !== b.cost ? a.cost < b.cost : a.lateness > b.lateness;

const worthOf = (orders: readonly PlacedOrder[]): Worth => ({
  cost: costOfOrders(orders),
  lateness: orders.reduce((sum, order) => sum + costOfOrder(order) * order.day, 0),
});

/**
 * Orders on some of the last days to order, each of which brings all that must be ordered before the next. Every way to
 * choose those days is tried, from the last on back.
 */
function cheapestSpans(
  wanted: readonly Wanted[],
  of: readonly number[],
  terms: Carriage,
): PlacedOrder[] {
  const all = of.flatMap((at) => wanted[at]?.lacks.map(({ orderBy }) => orderBy) ?? []);
  const days = [...new Set(all)].sort((a, b) => a - b);
  const best: { readonly orders: PlacedOrder[]; readonly worth: Worth }[] = [];
  best[days.length] = { orders: [], worth: { cost: 0, lateness: 0 } };
  for (let from = days.length - 1; from >= 0; from -= 1) {
    for (let to = from + 1; to <= days.length; to += 1) {
      const rest = best[to];
      const day = days[from] as Day;
      const span = { day, before: days[to] ?? Infinity, earliest: days[0] as Day };
      const order = orderFor(wanted, of, span, terms);
      // What does not keep so long can't come with this order, nor can anything after it.
      if (order === undefined) break;
      if (rest === undefined) continue;
      const orders = [order, ...rest.orders];
      const cost = costOfOrder(order);
      const worth = {
        cost: cost + rest.worth.cost,
        lateness: cost * day + rest.worth.lateness,
      };
      const known = best[from];
      if (known === undefined || isBetter(worth, known.worth)) best[from] = { orders, worth };
    }
  }
  return best[0]?.orders ?? [];
}

/** What one order brings: all that must be ordered from its day on and before another. */
interface Span {
  readonly day: Day;
  readonly before: Day;
  /** The first day of any order. */
  readonly earliest: Day;
}

/** The order of a span; undefined where some of it would not keep. */
function orderFor(
  wanted: readonly Wanted[],
  of: readonly number[],
  span: Span,
  terms: Carriage,
): PlacedOrder | undefined {
  const needed: Needed[] = [];
  const held: number[] = [];
  for (const at of of) {
    const each = wanted[at] as Wanted;
    if (each.lacks.some((lack) => isIn(lack, span) && lack.notBefore > span.day)) return undefined;
    const packs = packsIn(each, span);
    if (packs === 0) continue;
    needed.push({ prices: each.prices, packs });
    held.push(at);
  }
  const order = needed.length === 0 ? nothing : cheapestOrder(needed, terms);
  return { day: span.day, of: held, ...order };
}

const nothing: OneOrder = { packs: [], goods: 0, carriage: 0 };

const isIn = ({ orderBy }: Lack, { day, before }: Span): boolean =>
  orderBy >= day && orderBy < before;

/**
 * Whole packs for what must be ordered in a span. What a pack holds beyond goes to the next span, unless something of
 * the material would not keep from the first order on: then each span has packs of its own.
 */
function packsIn({ lacks, packSize }: Wanted, { day: from, before, earliest }: Span): number {
  const until = (day: Day): number =>
    lacks.reduce((sum, { orderBy, quantity }) => (orderBy < day ? sum + quantity : sum), 0);
  if (lacks.every(({ notBefore }) => notBefore <= earliest))
    return wholePacks(until(before), packSize) - wholePacks(until(from), packSize);
  return wholePacks(until(before) - until(from), packSize);
}

/** Sums of amounts that were exact show only binary drift beyond a billionth of a pack. */
const wholePacks = (quantity: number, packSize: number): number =>
  Math.ceil(Number((quantity / packSize).toFixed(9)));

/** Orders of one day become one: carriage is paid once, or not at all where together they reach free carriage. */
function joinedByDay(orders: readonly PlacedOrder[], terms: Carriage): PlacedOrder[] {
  const days = [...new Set(orders.map(({ day }) => day))].sort((a, b) => a - b);
  return days.map((day) => {
    const here = orders.filter((order) => order.day === day);
    const goods = here.reduce((sum, order) => sum + order.goods, 0);
    return {
      day,
      of: here.flatMap((order) => order.of),
      packs: here.flatMap((order) => order.packs),
      goods,
      carriage: goods >= terms.freeFrom ? 0 : Math.max(...here.map(({ carriage }) => carriage)),
    };
  });
}

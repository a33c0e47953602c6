import { normalQuantile } from './normal-quantile.ts';

/** A shelf that is watched at the end of every day. */
export interface WatchedStock {
  /** Use of past days to draw from, the days without use among them. */
  readonly uses: readonly number[];
  readonly leadDays: number;
  readonly sdLeadDays: number;
  /** An order is this much, or as many times it as brings stock over the point. */
  readonly lot: number;
  /** Order at or below it. */
  readonly point: number;
}

export interface SimulatedStock {
  /** Orders that came. */
  readonly waits: number;
  /** Orders that came before stock had run out. */
  readonly covered: number;
  /** Stock after each day's use, before what comes that day; below 0 is what was missing. */
  readonly path: readonly number[];
}

interface Coming {
  readonly day: number;
  readonly quantity: number;
}

/**
 * Plays days of use drawn at random from past days: at or below the point an order is placed, which
 * comes after the lead time. What is missing is used as soon as it comes. `roll` answers 0 ≤ x < 1;
 * with a `rollWait` of its own for the orders, two points meet the same days of use.
 */
export function simulateStock(
  stock: WatchedStock,
  start: number,
  days: number,
  roll: () => number,
  rollWait: () => number = roll,
): SimulatedStock {
  const { uses, lot, point } = stock;
  let onHand = start;
  let position = start;
  const coming: Coming[] = [];
  let waits = 0;
  let covered = 0;
  const path: number[] = [];
  for (let day = 0; day < days; day += 1) {
    const use = uses[Math.floor(roll() * uses.length)] ?? 0;
    onHand -= use;
    position -= use;
    path.push(onHand);
    for (let order = coming[0]; order !== undefined && order.day <= day; order = coming[0]) {
      waits += 1;
      if (onHand >= 0) covered += 1;
      onHand += order.quantity;
      coming.shift();
    }
    if (position <= point) {
      const quantity = lot * (Math.floor((point - position) / lot) + 1);
      // Orders come in the order in which they were placed.
      const soonest = Math.max(day + leadOf(stock, rollWait), coming.at(-1)?.day ?? 0);
      coming.push({ day: soonest, quantity });
      position += quantity;
    }
  }
  return { waits, covered, path };
}

/** Whole days that one order takes; at least one, since it is placed when the day is over. */
function leadOf({ leadDays, sdLeadDays }: WatchedStock, roll: () => number): number {
  // The quantile has no value at 0 and 1, so the roll is kept a little inside.
  const chance = sdLeadDays === 0 ? 0 : sdLeadDays * normalQuantile((roll() * 999 + 0.5) / 1000);
  return Math.max(1, Math.round(leadDays + chance));
}

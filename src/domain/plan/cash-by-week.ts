import type { Day } from '../kernel/day.ts';
import { type Exact, zero } from '../kernel/exact.ts';
import type { SupplyPlan } from './supplies.ts';
import { mondayOf } from './work-days.ts';

export interface CashWeek {
  readonly monday: Day;
  /** What the week's orders cost. */
  readonly cost: Exact;
  /** With all weeks before it. */
  readonly inAll: Exact;
}

/**
 * Money the orders of a plan take, week by week. Orders that should have been placed before `from`
 * fall in its week, for that is the soonest they can be paid.
 */
export function cashByWeek({ lines }: Pick<SupplyPlan, 'lines'>, from: Day): CashWeek[] {
  const weeks = new Map<Day, Exact>();
  for (const { orderBy, cost } of lines.flatMap(({ orders }) => orders)) {
    if (cost === undefined) continue;
    const monday = mondayOf(Math.max(orderBy, from));
    weeks.set(monday, (weeks.get(monday) ?? zero).plus(cost));
  }
  let inAll = zero;
  return [...weeks]
    .sort(([a], [b]) => a - b)
    .map(([monday, cost]) => {
      inAll = inAll.plus(cost);
      return { monday, cost, inAll };
    });
}

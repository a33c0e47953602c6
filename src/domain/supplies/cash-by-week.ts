import { type Day, wholeDay } from '../kernel/day.ts';
import { type Exact, sum, zero } from '../kernel/exact.ts';
import type { SupplyPlan } from './supplies.ts';
import { mondayOf } from '../schedule/work-days.ts';

export interface CashWeek {
  readonly monday: Day;
  /** What the week's orders cost. */
  readonly cost: Exact;
  /** What of it should have been ordered before. */
  readonly late: Exact;
  /** With all weeks before it. */
  readonly inAll: Exact;
}

const WEEK_DAYS = 7;

/**
 * Money the orders of a plan take in each week from that of `from` to the last order. Orders that should have
 * been placed before `from` fall in its week, for that is the soonest they can be paid. Without packs
 * or prices an order is left out.
 */
export function cashByWeek({ lines }: Pick<SupplyPlan, 'lines'>, from: Day): CashWeek[] {
  const today = wholeDay(from);
  const payments = lines
    .flatMap(({ orders }) => orders)
    .flatMap(({ orderBy, cost }) =>
      cost === undefined
        ? []
        : [{ monday: mondayOf(Math.max(orderBy, today)), cost, isLate: orderBy < today }],
    );
  const weeks: CashWeek[] = [];
  const first = mondayOf(today);
  const last = Math.max(first, ...payments.map(({ monday }) => monday));
  for (let monday = first; monday <= last; monday += WEEK_DAYS) {
    const here = payments.filter((payment) => payment.monday === monday);
    const cost = sum(here.map((payment) => payment.cost));
    weeks.push({
      monday,
      cost,
      late: sum(here.filter(({ isLate }) => isLate).map((payment) => payment.cost)),
      inAll: cost.plus(weeks.at(-1)?.inAll ?? zero),
    });
  }
  return weeks;
}

import type { Book } from '../book/book.ts';
import { type Day, wholeDay } from '../kernel/day.ts';
import { oncePerKey } from '../kernel/once-per.ts';
import { andThen, answer, type Result } from '../kernel/result.ts';
import { type OpenLine, openPlan, type OpenPlan } from './plan-lines.ts';
import { type Schedule, schedule } from './schedule.ts';

/** The plan from a day on and the batches that are to meet it. */
export interface PlannedBatches extends OpenPlan {
  readonly planned: Schedule;
}

/**
 * The batches of a season: the one plan that the calendar shows and that supplies are bought for. Lines
 * whose design has no layers have none. Fails where Plan has no line. Kept for the book.
 */
export function plannedBatches(book: Book, from: Day): Result<PlannedBatches> {
  const today = wholeDay(from);
  return kept(book, String(today), () =>
    andThen(openPlan(book, today), (plan) =>
      answer({ ...plan, planned: schedule(plan.open.filter(hasLayers), book.settings, today) }),
    ),
  );
}

const kept = oncePerKey<Book, Result<PlannedBatches>>();

export const hasLayers = ({ line }: OpenLine): boolean => line.design.layers.length > 0;

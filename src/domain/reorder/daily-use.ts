import type { Book, Item } from '../book/book.ts';
import { type Day, wholeDay } from '../kernel/day.ts';
import { Exact, sum, zero } from '../kernel/exact.ts';
import { andThen, answer, notYet, type Result } from '../kernel/result.ts';
import { type Count, exactOf, sumOfSquares } from '../kernel/tally.ts';
import { dayTotals } from '../stock/day-totals.ts';
import { historyOf } from '../stock/ledger-index.ts';

/** Mean and sample standard deviation of one day's use, in stock units. */
export interface DailyUse {
  readonly mean: Exact;
  readonly sd: Exact;
}

/**
 * Daily use over the History days that end with the as-of date: moves `used`, without those taken
 * back; days without use count as 0. Fails where the item has never been used by then.
 */
export function dailyUse(book: Book, item: Item, asOf: Day): Result<DailyUse> {
  return andThen(useOfDays(book, item, asOf), (used) =>
    answer(statistics(used, book.settings.historyDays)),
  );
}

/** What was used on each of the History days that had any use; see `dailyUse`. */
export function daysWithUse(book: Book, item: Item, asOf: Day): Result<Exact[]> {
  return andThen(useOfDays(book, item, asOf), (used) => answer(used.map(exactOf)));
}

function useOfDays(book: Book, item: Item, asOf: Day): Result<Count[]> {
  const last = wholeDay(asOf);
  const { use } = dayTotals(historyOf(book, item).asKnownOn(asOf));
  if (use.at(last) !== undefined) return answer(use.between(last - book.settings.historyDays, last));
  return notYet(
    `${item.name} has no use recorded yet, so its daily use is not known. Record batches first.`,
  );
}

/** Mean and SD over `days` days of which only `used` were not 0. */
function statistics(used: readonly Count[], days: number): DailyUse {
  const total = sum(used.map(exactOf));
  // Σ(use − mean)² = Σuse² − (Σuse)² ÷ days, in which the days without use count by themselves.
  const squares = sumOfSquares(used).minus(total.pow(2).div(days));
  return { mean: total.div(days), sd: Exact.max(zero, squares).div(days - 1).sqrt() };
}

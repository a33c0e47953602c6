import type { Book, Item } from '../book/book.ts';
import { type Day, wholeDay } from '../kernel/day.ts';
import { Exact, zero } from '../kernel/exact.ts';
import { andThen, answer, notYet, type Result } from '../kernel/result.ts';
import { type Count, exactOf, plus, sumOfSquares } from '../kernel/tally.ts';
import { dayTotals } from '../stock/day-totals.ts';
import type { ItemHistory } from '../stock/item-history.ts';
import { historyOf, liveMoves } from '../stock/ledger-index.ts';
import { RunningTotal } from '../stock/running-total.ts';

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
  const { used, hasReversals } = dayTotals(book, item);
  const counts = hasReversals ? liveUse(historyOf(book, item), asOf) : used;
  if (counts.at(last) !== undefined)
    return answer(counts.between(last - book.settings.historyDays, last));
  return notYet(
    `${item.name} has no use recorded yet, so its daily use is not known. Record batches first.`,
  );
}

/** What was used day by day, without what was taken back by the end of a day. */
function liveUse(history: ItemHistory, asOf: Day): RunningTotal {
  const uses = liveMoves(history, asOf).filter(({ reason }) => reason === 'used');
  const used = new RunningTotal(uses.length);
  for (const { when, quantity } of uses) used.add(wholeDay(when), -quantity);
  return used;
}

/** Mean and SD over `days` days of which only `used` were not 0. */
function statistics(used: readonly Count[], days: number): DailyUse {
  const total = exactOf(used.reduce(plus, 0));
  // Σ(use − mean)² = Σuse² − (Σuse)² ÷ days, in which the days without use count by themselves.
  const squares = sumOfSquares(used).minus(total.pow(2).div(days));
  return {
    mean: total.div(days),
    sd: Exact.max(zero, squares)
      .div(days - 1)
      .sqrt(),
  };
}

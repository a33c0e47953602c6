import type { Book, Item } from '../book/book.ts';
import { type Day, wholeDay } from '../kernel/day.ts';
import { type Exact, sum, zero } from '../kernel/exact.ts';
import { andThen, answer, notYet, type Result } from '../kernel/result.ts';
import { Tally } from '../kernel/tally.ts';
import { historyOf } from '../stock/ledger-index.ts';
import { live } from '../stock/reversals.ts';

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
  return andThen(daysWithUse(book, item, asOf), (used) =>
    answer(statistics(used, book.settings.historyDays)),
  );
}

/** What was used on each of the History days that had any use; see `dailyUse`. */
export function daysWithUse(book: Book, item: Item, asOf: Day): Result<Exact[]> {
  const days = book.settings.historyDays;
  const last = wholeDay(asOf);
  const known = historyOf(book, item).moves.filter((move) => wholeDay(move.when) <= last);
  const used = live(known).filter((move) => move.reason === 'used');
  if (used.length === 0) {
    return notYet(
      `${item.name} has no use recorded yet, so its daily use is not known. Record batches first.`,
    );
  }
  const byDay = new Map<Day, Tally>();
  for (const move of used) {
    const day = wholeDay(move.when);
    if (day <= last - days) continue;
    const tally = byDay.get(day) ?? new Tally();
    tally.add(-move.quantity);
    byDay.set(day, tally);
  }
  return answer([...byDay.values()].map((tally) => tally.total()));
}

/** Mean and SD over `days` days of which only `used` were not 0. */
function statistics(used: readonly Exact[], days: number): DailyUse {
  const mean = sum(used).div(days);
  const squares = sum(used.map((use) => use.minus(mean).pow(2))).plus(
    mean.pow(2).times(days - used.length),
  );
  const sd = used.length === 0 ? zero : squares.div(days - 1).sqrt();
  return { mean, sd };
}

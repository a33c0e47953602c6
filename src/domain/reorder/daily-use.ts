import type { Book, Item } from '../book/book.ts';
import { valueIn } from '../book/ledger.ts';
import { type Day, wholeDay } from '../kernel/day.ts';
import { Exact, zero } from '../kernel/exact.ts';
import { andThen, answer, notYet, type Result } from '../kernel/result.ts';
import { type Count, exactOf, plus, sumOfSquares, Tally } from '../kernel/tally.ts';
import { itemSums } from '../stock/item-sums.ts';
import { historyOf } from '../stock/ledger-index.ts';

/** Mean and sample variance of one day's use, in stock units and their squares. */
export interface DailyUse {
  readonly mean: Exact;
  readonly variance: Exact;
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
  const history = historyOf(book, item);
  const rows = itemSums(history).hasReversals ? history.liveRows(asOf) : history.rows;
  const { whens, reasons, quantities } = history.ledger.columns;
  const last = wholeDay(asOf);
  const usedOn = new Map<Day, Tally>();
  let wasEverUsed = false;
  for (const row of rows) {
    const day = wholeDay(whens[row] as Day);
    if (day > last || valueIn(reasons, row) !== 'used') continue;
    wasEverUsed = true;
    if (day <= last - book.settings.historyDays) continue;
    const tally = usedOn.get(day) ?? new Tally();
    usedOn.set(day, tally);
    tally.add(-(quantities[row] as number));
  }
  if (wasEverUsed)
    return answer([...usedOn].sort(([a], [b]) => a - b).map(([, { count }]) => count));
  return notYet(
    `${item.name} has no use recorded yet, so its daily use is not known. Record batches first.`,
  );
}

/** Mean and variance over `days` days of which only `used` were not 0. */
function statistics(used: readonly Count[], days: number): DailyUse {
  const total = exactOf(used.reduce(plus, 0));
  // Σ(use − mean)² = Σuse² − (Σuse)² ÷ days, in which the days without use count by themselves.
  const squares = sumOfSquares(used).minus(total.times(total).div(days));
  return { mean: total.div(days), variance: Exact.max(zero, squares).div(days - 1) };
}

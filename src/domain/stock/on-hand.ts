import type { Book, Item } from '../book/book.ts';
import { type Day, wholeDay } from '../kernel/day.ts';
import { type Exact } from '../kernel/exact.ts';
import { ofMillionths, Tally } from '../kernel/tally.ts';
import { firstAt, historyOf, type ItemHistory } from './ledger-index.ts';

/** Quantity on hand at the end of a day, in the item's stock unit: lots received by then plus all moves by then. */
export function onHand(book: Book, item: Item, asOf: Day): Exact {
  const { days, totals } = runningTotals(historyOf(book, item));
  const last = wholeDay(asOf);
  const count = firstAt(days.length, (at) => (days[at] ?? last) > last);
  const total = totals[count - 1] ?? 0;
  return typeof total === 'number' ? ofMillionths(total) : total;
}

/** Days on which stock changed, and what was on hand at the end of each. */
interface RunningTotals {
  readonly days: readonly Day[];
  /** As millionths where they are whole: a decimal is made only of the one that is asked for. */
  readonly totals: readonly (number | Exact)[];
}

const known = new WeakMap<ItemHistory, RunningTotals>();

function runningTotals(history: ItemHistory): RunningTotals {
  const found = known.get(history);
  if (found !== undefined) return found;
  const changes = [
    ...history.lots.map(({ received, quantity }) => ({ day: wholeDay(received), quantity })),
    ...history.moves.map(({ when, quantity }) => ({ day: wholeDay(when), quantity })),
  ].sort((a, b) => a.day - b.day);
  const days: Day[] = [];
  const totals: (number | Exact)[] = [];
  const tally = new Tally();
  changes.forEach(({ day, quantity }, at) => {
    tally.add(quantity);
    if (changes[at + 1]?.day === day) return;
    days.push(day);
    totals.push(tally.inMillionths ?? tally.total());
  });
  known.set(history, { days, totals });
  return { days, totals };
}

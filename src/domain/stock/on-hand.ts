import type { Book, Item } from '../book/book.ts';
import { type Day, wholeDay } from '../kernel/day.ts';
import type { Exact } from '../kernel/exact.ts';
import { exactOf, plus } from '../kernel/tally.ts';
import { dayTotals } from './day-totals.ts';

/** Quantity on hand at the end of a day, in the item's stock unit: lots received by then plus all moves by then. */
export function onHand(book: Book, item: Item, asOf: Day): Exact {
  const { received, moved } = dayTotals(book, item);
  const last = wholeDay(asOf);
  return exactOf(plus(received.at(last) ?? 0, moved.at(last) ?? 0));
}

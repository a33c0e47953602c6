import type { Book, Item } from '../book/book.ts';
import { type Day, wholeDay } from '../kernel/day.ts';
import type { Exact } from '../kernel/exact.ts';
import { exactOf } from '../kernel/tally.ts';
import { dayTotals } from './day-totals.ts';
import { historyOf } from './ledger-index.ts';

/** Quantity on hand at the end of a day, in the item's stock unit: lots received by then plus all moves by then. */
export function onHand(book: Book, item: Item, asOf: Day): Exact {
  return exactOf(dayTotals(historyOf(book, item)).stock.at(wholeDay(asOf)) ?? 0);
}

import type { Book, Item } from '../book/book.ts';
import type { Day } from '../kernel/day.ts';
import type { Exact } from '../kernel/exact.ts';
import { quantityOn } from './item-sums.ts';
import { historyOf } from './ledger-index.ts';

/** Quantity on hand at the end of a day, in the item's stock unit: lots received by then plus all moves by then. */
export const onHand = (book: Book, item: Item, asOf: Day): Exact =>
  quantityOn(historyOf(book, item), asOf);

import type { Book, Item } from '../book/book.ts';
import type { Day } from '../kernel/day.ts';
import { type Exact } from '../kernel/exact.ts';
import { Tally } from '../kernel/tally.ts';
import { historyOf } from './ledger-index.ts';

/** Quantity on hand at the end of a day, in the item's stock unit: lots received by then plus all moves by then. */
export function onHand(book: Book, item: Item, asOf: Day): Exact {
  const until = Math.floor(asOf) + 1;
  const { lots, moves } = historyOf(book, item);
  const tally = new Tally();
  for (const lot of lots) if (lot.received < until) tally.add(lot.quantity);
  for (const move of moves) if (move.when < until) tally.add(move.quantity);
  return tally.total();
}

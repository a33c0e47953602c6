import type { Book } from '../book/book.ts';
import type { Day } from '../kernel/day.ts';
import { onHand } from '../stock/on-hand.ts';
import type { NewMove, StockChange } from './posting.ts';

/** Stock on hand before and after, for every item that moves. */
export function stockChanges(book: Book, moves: readonly NewMove[], asOf: Day): StockChange[] {
  const changes = new Map<string, StockChange>();
  for (const { item, quantity } of moves) {
    const before = changes.get(item.name)?.before ?? onHand(book, item, asOf);
    const after = (changes.get(item.name)?.after ?? before).plus(quantity);
    changes.set(item.name, { item, before, after });
  }
  return [...changes.values()];
}

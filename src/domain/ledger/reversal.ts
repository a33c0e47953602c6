import type { Book, Move } from '../book/book.ts';
import type { Day } from '../kernel/day.ts';
import { exact, zero } from '../kernel/exact.ts';
import type { NewMove, StockChange } from './posting.ts';
import { TAKES_BACK } from './sale.ts';
import { stockChanges } from './stock-changes.ts';

/**
 * The move that takes another back. Dated today, but never before the move itself, which a partner in
 * another time zone may have dated tomorrow: until its own day a move cannot be taken back.
 */
export function reversalOf(move: Move, today: Day, by: string): NewMove {
  return {
    entry: move.entry + TAKES_BACK,
    when: Math.max(today, move.when),
    reason: 'reversed',
    item: move.item,
    quantity: exact(move.quantity).neg(),
    lot: move.lot,
    value: move.value === undefined ? zero : exact(move.value).neg(),
    batch: move.batch,
    by,
    note: move.entry,
  };
}

/** How the stock of each item changes by the day on which all reversals count. */
export const changesByReversals = (
  book: Book,
  reversals: readonly NewMove[],
  today: Day,
): StockChange[] =>
  stockChanges(book, reversals, Math.max(today, ...reversals.map(({ when }) => when)));

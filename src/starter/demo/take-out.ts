import type { Book } from '../../domain/book/book.ts';
import { findItem } from '../../domain/book/find.ts';
import { type Exact, exact, sum, toCell, zero } from '../../domain/kernel/exact.ts';
import type { Day } from '../../domain/kernel/day.ts';
import { type Taken, takeStock } from '../../domain/ledger/take-stock.ts';
import { currencyDecimals, roundMoney } from '../../domain/money/currency.ts';
import { splitAmount } from '../../domain/money/split.ts';
import { onHand } from '../../domain/stock/on-hand.ts';
import type { RowOfCells } from '../blocks/table-rows.ts';
import { sound } from './diary.ts';

/** Stock that leaves the shelf otherwise than by a pour. */
export interface StockLost {
  readonly entry: string;
  readonly when: Day;
  readonly reason: 'wasted' | 'counted';
  readonly item: string;
  readonly quantity: number;
  readonly by: string;
  readonly note: string;
}

/** The moves that take stock out, one for each lot, valued as the ledger values it, to the cent. */
export function movesOut(book: Book, leaving: StockLost): RowOfCells<'moves'>[] {
  const item = sound(findItem(book, leaving.item));
  const when = { day: leaving.when, latest: leaving.when };
  const { picks, shortage } = sound(takeStock(book, item, exact(leaving.quantity), when, false));
  if (shortage) throw new Error(`The demo lacks ${leaving.item} on ${String(leaving.when)}`);
  return toTheCent(picks, book.settings.currency).map((pick, index) => ({
    entry: `${leaving.entry}.${String(index + 1).padStart(2, '0')}`,
    when: leaving.when,
    reason: leaving.reason,
    material: item.name,
    quantity: toCell(pick.quantity.neg()),
    lot: pick.lot,
    value: toCell(pick.value.neg()),
    by: leaving.by,
    note: leaving.note,
  }));
}

/** On hand of an item by name; 0 for one that nothing is known of. */
export function onHandOf(book: Book, item: string, day: Day): Exact {
  const found = findItem(book, item);
  return found.ok ? onHand(book, found.value, day) : zero;
}

function toTheCent(picks: readonly Taken[], currency: string): readonly Taken[] {
  const values = picks.map(({ value }) => value);
  const total = roundMoney(sum(values), currency);
  const parts = splitAmount(total, values, currencyDecimals(currency));
  return picks.map((pick, index) => ({ ...pick, value: parts[index] ?? zero }));
}

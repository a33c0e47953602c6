import type { Book, Item, Move } from '../../src/domain/book/book.ts';
import { itemOfMaterial } from '../../src/domain/book/find.ts';
import { Ledger, type Repeated } from '../../src/domain/book/ledger.ts';
import type { Pour } from '../../src/domain/ledger/pour.ts';
import { postBatch } from '../../src/domain/ledger/post-batch.ts';
import type { BatchPosting } from '../../src/domain/ledger/posting.ts';
import { undoBatch } from '../../src/domain/ledger/undo-batch.ts';
import type { Day } from '../../src/domain/kernel/day.ts';
import type { Result } from '../../src/domain/kernel/result.ts';
import { indexOf } from '../../src/domain/stock/ledger-index.ts';
import { changeForBatch, changeForUndo } from '../../src/workbook/change.ts';
import { findTables } from '../../src/workbook/find-tables.ts';
import { columnPrint, RowPrints } from '../../src/workbook/read/fingerprint.ts';
import { readBook, recogniseTables } from '../../src/workbook/read/read-book.ts';
import { applyChange } from './apply-change.ts';
import { ranges, tableData, type Tables } from './small-book.ts';

/** The value of an answer; fails the test with the sentence where there is none. */
export function sure<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.failure.sentence);
  return result.value;
}

export const readTables = (tables: Tables): Book =>
  sure(readBook(sure(recogniseTables(ranges(tables)))));

/** What posting a pour wrote, and the tables after it; undefined where stock is short or the pour is refused. */
export interface Posted {
  readonly posting: BatchPosting;
  readonly before: Book;
  readonly after: Tables;
}

export function post(
  tables: Tables,
  pourOf: (book: Book, today: Day) => Pour,
  today: Day,
): Posted | undefined {
  const before = readTables(tables);
  const result = postBatch(before, pourOf(before, today), today);
  if (!result.ok || result.value.kind === 'short') return undefined;
  const { posting } = result.value;
  const change = sure(changeForBatch(posting, findTables(tableData(tables))));
  return { posting, before, after: applyChange(tables, change) };
}

/** The tables after a batch is taken back; undefined where that is refused. */
export function undo(tables: Tables, batch: string, today: Day): Tables | undefined {
  const result = undoBatch(readTables(tables), batch, today, '');
  if (!result.ok) return undefined;
  return applyChange(tables, sure(changeForUndo(result.value, findTables(tableData(tables)))));
}

/** Every item that the book has materials, lots or moves of. */
export function itemsOf(book: Book): Item[] {
  const moved = [...indexOf(book).values()].flatMap(({ moves }) => moves.map(({ item }) => item));
  const all = [...[...book.materials.values()].map(itemOfMaterial), ...moved];
  return [...new Map(all.map((item) => [item.name, item])).values()];
}

/** Moves as a ledger keeps them. */
export function ledgerOf(moves: readonly Move[]): Ledger {
  const each = <T>(of: (move: Move) => T): Repeated<T> => ({
    values: moves.map(of),
    places: Int32Array.from(moves.keys()),
  });
  const columns = {
    entries: moves.map(({ entry }) => entry),
    whens: Float64Array.from(moves, ({ when }) => when),
    reasons: each(({ reason }) => reason),
    items: each(({ item }) => item),
    quantities: Float64Array.from(moves, ({ quantity }) => quantity),
    lots: each(({ lot }) => lot),
    values: Float64Array.from(moves, ({ value = NaN }) => value),
    batches: each(({ batch }) => batch),
    bys: each(({ by }) => by),
    notes: each(({ note }) => note),
  };
  const prints = new RowPrints(moves.length);
  moves.forEach((move, row) => {
    prints.addText(row, columnPrint('moves', 'all'), JSON.stringify(move));
  });
  return new Ledger(columns, prints);
}

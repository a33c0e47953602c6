import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Book } from '../../src/domain/book/book.ts';
import type { Result } from '../../src/domain/kernel/result.ts';
import { dailyUse } from '../../src/domain/reorder/daily-use.ts';
import { indexAfter, indexOf } from '../../src/domain/stock/ledger-index.ts';
import { onHand } from '../../src/domain/stock/on-hand.ts';
import { stockAt, unitCost } from '../../src/domain/stock/valuation.ts';
import type { Cell } from '../../src/workbook/port.ts';
import { readBook, recogniseTables } from '../../src/workbook/read/read-book.ts';
import { LAST_DAY } from '../support/arbitrary-book.ts';
import { workedWorkshop } from '../support/arbitrary-pours.ts';
import { freeRows } from '../support/free-rows.ts';
import { itemsOf, sure } from '../support/ledger-of.ts';
import { type Range, ranges, type Tables } from '../support/small-book.ts';

/** What a maker may do to the ledger between two recalculations, at a place drawn from 0 to 1. */
type Edit = (rows: Range, at: number) => Range;

const place = (rows: Range, at: number): number => {
  const free = freeRows(rows);
  return free[Math.floor(at * free.length)] ?? rows.length;
};

const edits: Readonly<Record<string, Edit>> = {
  'another quantity': (rows, at) => changed(rows, at, 4, (cell) => Number(cell) * 2),
  'another day': (rows, at) => changed(rows, at, 1, (cell) => Number(cell) + 1),
  'another value': (rows, at) => changed(rows, at, 6, () => 1.25),
  'another note': (rows, at) => changed(rows, at, 9, () => 'seen'),
  'a line taken out': (rows, at) => rows.filter((_, row) => row !== place(rows, at)),
  'a line moved to the end': (rows, at) => [
    ...rows.filter((_, row) => row !== place(rows, at)),
    ...rows.slice(place(rows, at)).slice(0, 1),
  ],
  'a line added': (rows, at) =>
    rows
      .slice(place(rows, at))
      .slice(0, 1)
      .reduce<Range>(
        (all, row) => [...all, [`${String(row[0])}+${rows.length}`, ...row.slice(1)]],
        rows,
      ),
  'lines turned round': (rows) => [...rows].reverse(),
  nothing: (rows) => rows,
};

function changed(rows: Range, at: number, column: number, to: (cell: Cell) => Cell): Range {
  return rows.map((row, y) =>
    y === place(rows, at) ? row.map((cell, x) => (x === column ? to(cell) : cell)) : row,
  );
}

const withEdit = (tables: Tables, edit: Edit, at: number): Tables => {
  const [headers = [], ...rows] = tables['LedgerLines'] ?? [];
  return { ...tables, LedgerLines: [headers, ...edit(rows, at)] };
};

const inWords = (result: Result<unknown>): string =>
  result.ok ? JSON.stringify(result.value) : result.failure.sentence;

/** Everything that stock says of a book, on its last day and on one before. */
function allAnswers(book: Book): string[] {
  return itemsOf(book)
    .flatMap((item) =>
      [LAST_DAY, LAST_DAY - 40].map((day) => {
        const stock = stockAt(book, item, day);
        const shelf = stock.filled.map(
          ({ lot, quantity, unitValue }) => `${lot} ${quantity} ${unitValue}`,
        );
        const said = [stock.value, unitCost(book, item, day), dailyUse(book, item, day)];
        return [item.name, onHand(book, item, day), ...said.map(inWords), ...shelf].join('; ');
      }),
    )
    .sort();
}

const read = (tables: Tables, before?: Book): Book => {
  const book = sure(readBook(sure(recogniseTables(ranges(tables), before)), before));
  if (before !== undefined) indexAfter(before, book);
  return book;
};

describe('a book read after another', () => {
  const step = fc.record({
    edit: fc.constantFrom(...Object.keys(edits)),
    at: fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }),
  });

  it('has the handle and all answers of one read by itself', () => {
    fc.assert(
      fc.property(workedWorkshop, fc.array(step, { maxLength: 5 }), (start, steps) => {
        let tables = start;
        let warm = read(tables);
        allAnswers(warm);
        for (const { edit, at } of steps) {
          tables = withEdit(tables, edits[edit] as Edit, at);
          warm = read(tables, warm);
          const cold = read(tables);
          expect(warm.handle, edit).toBe(cold.handle);
          expect(allAnswers(warm), edit).toEqual(allAnswers(cold));
        }
      }),
      { numRuns: 150 },
    );
  });

  it('takes over what was worked out of items that the edit did not touch, and no other', () => {
    fc.assert(
      fc.property(workedWorkshop, fc.nat(), (tables, drawn) => {
        const before = read(tables);
        allAnswers(before);
        const { moves } = before.ledger;
        const free = freeRows((tables['LedgerLines'] ?? []).slice(1));
        const row = free[drawn % Math.max(1, free.length)] ?? moves.length;
        const noteIt: Edit = (rows) =>
          rows.map((cells, y) => (y === row ? [...cells.slice(0, 9), `seen ${drawn}`] : cells));
        const after = indexOf(read(withEdit(tables, noteIt, 0), before));
        const touched = moves[row]?.item.name.toLowerCase();
        for (const [key, { content }] of after)
          expect(content === indexOf(before).get(key)?.content, key).toBe(key !== touched);
      }),
      { numRuns: 60 },
    );
  });
});

import { expect, it } from 'vitest';
import { findTables } from '../../../src/workbook/find-tables.ts';
import type { Cell, TableData } from '../../../src/workbook/port.ts';
import { planOf } from '../../../taskpane/care/merge/merge-task.ts';
import { bookOf } from '../book-of.ts';
import { rowsOf, smallWorkshop, withRows } from '../small-workshop.ts';

/** The small workshop with a column of the maker's own beside Lots. */
const withShelf = (tables: readonly TableData[], shelf: Cell) =>
  tables.map((table) =>
    table.name === 'Lots'
      ? {
          ...table,
          headers: [...table.headers, 'Shelf'],
          rows: table.rows.map((row) => [...row, row[0] === 'L-9' ? shelf : '']),
        }
      : table,
  );

it('says before anything is written what no host could write', () => {
  const tables = withShelf(smallWorkshop, '');
  const more = withRows(smallWorkshop, 'Lots', (rows) => [
    ...rows,
    ...rowsOf(['L-9|Clear base|2026-11-02|500|4.5||']),
  ]);
  const state = {
    kind: 'ready' as const,
    book: bookOf(tables),
    names: findTables(tables),
    tables,
  };
  const planned = (shelf: Cell) => planOf(state, { copy: withShelf(more, shelf), chosen: {} });
  expect(planned('low').ok).toBe(true);
  expect(planned('x'.repeat(40_000))).toMatchObject({
    ok: false,
    failure: { sentence: 'Shelf for Lots is longer than the 32767 characters a cell can hold.' },
  });
});

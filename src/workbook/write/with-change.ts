import { rowsById } from '../ids.ts';
import type { Cell, Change, TableData } from '../port.ts';
import { type Plan, planChange } from './plan-change.ts';
import type { CellsOf, WritableTable } from './writable-table.ts';

/** A table of plain cells, ready for a change to be looked for in it. */
export type PlainTable = WritableTable & TableData;

/** Tables held as plain cells; each id column is gone through once. */
export const plainTable = (table: TableData): PlainTable => {
  const looked = new Map<number, ReturnType<typeof rowsById>>();
  return {
    ...table,
    height: table.rows.length,
    idsUnder(column) {
      const ids = looked.get(column) ?? rowsById(table.rows.map((row) => row[column]));
      looked.set(column, ids);
      return ids;
    },
  };
};

const plainCells: CellsOf<PlainTable> = {
  row: ({ rows }, at) => rows[at] ?? [],
  isFormula: () => false,
};

/** The tables with a change written, or as they are where it stands already or is refused. */
export interface Changed {
  readonly plan: Plan<PlainTable>;
  readonly tables: readonly TableData[];
}

/** Writes a change into tables of plain cells, whole or not at all. Rows that nobody touches are the very same. */
export function withChange(tables: readonly TableData[], change: Change): Changed {
  const plain = tables.map(plainTable);
  const plan = planChange(change, plain, plainCells);
  if (plan.kind !== 'write') return { plan, tables };
  const written = plain.map((table, index) => {
    const rows = plan.rows.filter((row) => row.table === table);
    const cells = plan.cells.filter((cell) => cell.table === table);
    const before = tables[index] ?? table;
    if (rows.length + cells.length === 0) return before;
    const next = [...table.rows];
    for (const { at, column, value } of cells) next[at] = (next[at] ?? []).with(column, value);
    for (const row of rows) {
      const cellsThere: Cell[] = [...(next[row.at] ?? table.headers.map(() => ''))];
      for (const [column, cell] of row.cells) cellsThere[column] = cell;
      next[row.at] = cellsThere;
    }
    return { ...before, rows: next };
  });
  return { plan, tables: written };
}

import { addUnder } from '../../domain/kernel/add-under.ts';
import type { Found, FoundRow } from './find-rows.ts';
import type { CellsOf, WritableTable } from './writable-table.ts';

/** A row whose cells a plan takes, and the id that it must still hold when they are read. */
export interface RowToLookAt<T> {
  readonly table: T;
  readonly at: number;
  readonly idColumn: number;
  readonly id: string;
}

/** Rows that hold a change's ids and, of tables that are to grow, those below the last id: they may be blank. */
export function rowsToLookAt<T extends WritableTable>({ rows, cells }: Found<T>): RowToLookAt<T>[] {
  const standing = [...rows, ...cells].flatMap(({ table, at, idColumn, id }) =>
    at === undefined ? [] : [{ table, at, idColumn, id }],
  );
  const growing = new Map(
    rows.flatMap(({ table, idColumn, at }) => (at === undefined ? [[table, idColumn]] : [])),
  );
  const ends = [...growing].flatMap(([table, idColumn]) =>
    rowsBelowIds(table, idColumn).map((at) => ({ table, at, idColumn, id: '' })),
  );
  return [...standing, ...ends];
}

/** The body row for each row that is missing: a table's blank last rows are filled before it grows. */
export function placesFor<T extends WritableTable>(
  missing: readonly FoundRow<T>[],
  cells: CellsOf<T>,
): number[] {
  const byTable = new Map<T, FoundRow<T>[]>();
  for (const row of missing) addUnder(byTable, row.table, row);
  const next = new Map([...byTable].map(([table, rows]) => [table, firstFree(table, rows, cells)]));
  return missing.map(({ table }) => {
    const at = next.get(table) ?? table.height;
    next.set(table, at + 1);
    return at;
  });
}

function firstFree<T extends WritableTable>(
  table: T,
  rows: readonly FoundRow<T>[],
  cells: CellsOf<T>,
): number {
  const written = new Set(rows.flatMap((row) => [...row.cells.keys()]));
  const isFree = (at: number): boolean => {
    const row = cells.row(table, at);
    return table.headers.every((_, column) =>
      // A column of the maker's own that is worked out may show something in a blank row.
      cells.isFormula(table, at, column) ? !written.has(column) : (row[column] ?? '') === '',
    );
  };
  const end = rowsBelowIds(table, rows[0]?.idColumn ?? 0);
  const filled = end.findLastIndex((at) => !isFree(at));
  return end[filled + 1] ?? table.height;
}

/** The body rows below the last one that holds an id. */
function rowsBelowIds(table: WritableTable, idColumn: number): number[] {
  let last = -1;
  for (const rows of table.idsUnder(idColumn).values()) last = Math.max(last, rows.at(-1) ?? last);
  return Array.from({ length: table.height - last - 1 }, (_, down) => last + 1 + down);
}

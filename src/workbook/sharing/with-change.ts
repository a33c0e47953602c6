import { nameKey } from '../../domain/kernel/names.ts';
import type { Append, Cell, Change, RowToWrite, TableData, Update } from '../port.ts';

/** The tables as they would stand with a change written, to look at before it is. */
export function withChange(tables: readonly TableData[], change: Change): readonly TableData[] {
  return tables.map((table) => {
    const isHere = ({ table: name }: Append | Update): boolean =>
      nameKey(name) === nameKey(table.name);
    const set = change.updates.filter(isHere);
    const added = change.appends.filter(isHere).flatMap(({ rows }) => rows);
    if (set.length + added.length === 0) return table;
    const rows = table.rows.map((row) => [...row]);
    for (const update of set) {
      const row = rowOf(table, rows, update);
      if (row !== undefined) write(table, row, update.set);
    }
    const blank = (): Cell[] => table.headers.map(() => '');
    return { ...table, rows: [...rows, ...added.map((row) => write(table, blank(), row))] };
  });
}

function rowOf(
  { headers }: TableData,
  rows: Cell[][],
  { idColumn, id, nth = 0 }: Update,
): Cell[] | undefined {
  const at = placeOf(headers, idColumn);
  return rows.filter((row) => nameKey(String(row[at] ?? '')) === nameKey(id))[nth];
}

function write({ headers }: TableData, row: Cell[], cells: RowToWrite): Cell[] {
  for (const [header, cell] of Object.entries(cells)) {
    const at = placeOf(headers, header);
    if (at >= 0) row[at] = cell;
  }
  return row;
}

const placeOf = (headers: readonly string[], header: string): number =>
  headers.findIndex((known) => nameKey(known) === nameKey(header));

import { nameKey } from '../../domain/kernel/names.ts';
import { idKey, rowsById } from '../ids.ts';
import type { Append, Cell, Change, RowToWrite, TableData, Update } from '../port.ts';
import { clearingOf } from '../removal.ts';

/** The tables as they would stand with a change written, to look at before it is. */
export function withChange(tables: readonly TableData[], change: Change): readonly TableData[] {
  const updates = [...change.updates, ...(change.removals ?? []).map(clearingOf)];
  return tables.map((table) => {
    const isHere = ({ table: name }: Append | Update): boolean =>
      nameKey(name) === nameKey(table.name);
    const set = updates.filter(isHere);
    const added = change.appends.filter(isHere).flatMap(({ rows }) => rows);
    if (set.length + added.length === 0) return table;
    const placeOf = placesOf(table.headers);
    const rows = updated(table.rows, set, placeOf);
    const blank = (): Cell[] => table.headers.map(() => '');
    return { ...table, rows: [...rows, ...added.map((row) => written(blank(), row, placeOf))] };
  });
}

type PlaceOf = (header: string) => number | undefined;

/** Rows of which some have other cells; the others are the very same. */
function updated(
  rows: TableData['rows'],
  updates: readonly Update[],
  placeOf: PlaceOf,
): readonly (readonly Cell[])[] {
  if (updates.length === 0) return rows;
  const next = [...rows];
  const looked = new Map<string, ReturnType<typeof rowsById>>();
  for (const { idColumn, id, nth = 0, set } of updates) {
    const places = looked.get(idColumn) ?? rowsById(columnOf(rows, placeOf(idColumn)));
    looked.set(idColumn, places);
    const at = places.get(idKey(id))?.[nth];
    const row = at === undefined ? undefined : next[at];
    if (at !== undefined && row !== undefined) next[at] = written([...row], set, placeOf);
  }
  return next;
}

const columnOf = (rows: TableData['rows'], column = -1) => rows.map((row) => row[column]);

function written(row: Cell[], cells: RowToWrite, placeOf: PlaceOf): Cell[] {
  for (const [header, cell] of Object.entries(cells)) {
    const at = placeOf(header);
    if (at !== undefined) row[at] = cell;
  }
  return row;
}

/** Where a header stands, however it is spelled; the first of two alike. */
function placesOf(headers: readonly string[]): PlaceOf {
  const places = new Map(
    [...headers.entries()].reverse().map(([at, header]) => [nameKey(header), at]),
  );
  return (header) => places.get(nameKey(header));
}

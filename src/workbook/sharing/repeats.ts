import { batchStates } from '../../domain/book/words.ts';
import { nameKey } from '../../domain/kernel/names.ts';
import { findTables } from '../find-tables.ts';
import type { Cell, Change, TableData, Update } from '../port.ts';
import { type TableKind, tables } from '../schema.ts';
import { idHeader } from './table-keys.ts';

/** A line whose id another line above it bears already. */
export interface Repeat {
  readonly table: string;
  readonly id: string;
  /** The id that would be its own. */
  readonly newId: string;
  /** 1 is the first row under the headers. */
  readonly row: number;
  readonly firstRow: number;
  /** Whether both say the same in every column. */
  readonly isCopy: boolean;
  readonly update: Update;
}

/** Tables whose lines may get another id: what is known by name elsewhere keeps its name. */
const kinds: readonly TableKind[] = ['moves', 'lots', 'batches'];

/**
 * Lines of the ledger that share an id. No line that is added can part them, since nothing can be
 * read until they are: only the id of the later one changes. The health check then finds what was
 * written twice, and takes it back by a line.
 */
export function repeatsOf(all: readonly TableData[]): Repeat[] {
  const names = findTables(all);
  return kinds.flatMap((kind) => {
    const table = names.get(kind);
    return table === undefined ? [] : repeatsIn(kind, table);
  });
}

/** Gives each its own id, all at once. */
export const changeForRepeats = (repeats: readonly Repeat[]): Change => ({
  appends: [],
  updates: repeats.map(({ update }) => update),
});

function repeatsIn(kind: TableKind, table: TableData): Repeat[] {
  const idColumn = placeOf(table, idHeader(kind));
  const idAt = (row: readonly Cell[]): string => String(row[idColumn] ?? '').trim();
  const rowsById = new Map<string, number[]>();
  table.rows.forEach((row, index) => {
    const key = nameKey(idAt(row));
    if (key !== '') rowsById.set(key, [...(rowsById.get(key) ?? []), index]);
  });
  const hasState = placeOf(table, tables.batches.columns.state.header) >= 0;
  const taken = new Set(rowsById.keys());
  return [...rowsById.values()].flatMap((rows) => {
    const [first = 0] = rows;
    const id = idAt(table.rows[first] ?? []);
    // Ids that differ in their letters' case are told apart by some hosts and not by others.
    if (rows.some((row) => idAt(table.rows[row] ?? []) !== id)) return [];
    return rows.flatMap((row, nth): Repeat[] => {
      const isCopy = isSameRow(table.rows[first], table.rows[row]);
      // Of two batches that differ only the maker knows which was poured.
      if (nth === 0 || (kind === 'batches' && !(isCopy && hasState))) return [];
      const newId = freeId(id, taken);
      const set = { [table.headers[idColumn] ?? '']: newId, ...stateOf(kind, table) };
      const update = { table: table.name, idColumn: table.headers[idColumn] ?? '', id, nth, set };
      return [{ table: table.name, id, newId, row: row + 1, firstRow: first + 1, isCopy, update }];
    });
  });
}

/** The copy of a batch's line has no moves of its own: it counts as undone. */
function stateOf(kind: TableKind, table: TableData): Readonly<Record<string, Cell>> {
  const at = placeOf(table, tables.batches.columns.state.header);
  return kind === 'batches' ? { [table.headers[at] ?? '']: batchStates.undone } : {};
}

function freeId(id: string, taken: Set<string>): string {
  let number = 2;
  while (taken.has(nameKey(`${id}.${String(number)}`))) number += 1;
  const free = `${id}.${String(number)}`;
  taken.add(nameKey(free));
  return free;
}

const isSameRow = (one: readonly Cell[] = [], other: readonly Cell[] = []): boolean =>
  one.every((cell, at) => String(cell).trim() === String(other[at] ?? '').trim());

const placeOf = ({ headers }: TableData, header: string): number =>
  headers.findIndex((known) => nameKey(known) === nameKey(header));

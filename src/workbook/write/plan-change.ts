import { shortened } from '../../domain/kernel/names.ts';
import type { Applied, Cell, Change, RowToWrite, Update } from '../port.ts';
import { whyKept } from './clearing.ts';
import { type Found, type FoundCells, type FoundRow, findRows } from './find-rows.ts';
import { placesFor } from './free-rows.ts';
import { holdsExactly, saysTheSame } from './same-cell.ts';
import { type CellsOf, columnOf, type WritableTable } from './writable-table.ts';

/** A row to write: into the blank one that stands there, or below the table where `at` is past its end. */
export interface RowToAdd<T> {
  readonly table: T;
  readonly row: RowToWrite;
  /** The body row that it becomes; a table's rows follow each other. */
  readonly at: number;
  readonly cells: ReadonlyMap<number, Cell>;
}

/** A cell to set, and what stands there now. */
export interface CellToSet<T> {
  readonly table: T;
  readonly update: Update;
  readonly idColumn: number;
  readonly at: number;
  readonly column: number;
  /** Part of clearing a whole row. */
  readonly isRemoved: boolean;
  readonly before: Cell;
  readonly value: Cell;
}

/** What is left to write of a change. */
export interface Writes<T> {
  readonly kind: 'write';
  readonly rows: readonly RowToAdd<T>[];
  /** To be set in this order, and before any row is added. */
  readonly cells: readonly CellToSet<T>[];
}

export type Plan<T> = Writes<T> | Exclude<Applied, { kind: 'applied' }>;

/**
 * What a change means for tables that can be looked at whole: all of it stands there already, or it is
 * refused with a sentence, or these rows and cells are left to write. Touches nothing. The only place
 * that decides so: a host finds places and writes.
 */
export function planChange<T extends WritableTable>(
  change: Change,
  tables: readonly T[],
  cells: CellsOf<T>,
): Plan<T> {
  const found = findRows(change, tables);
  return found.ok ? planFound(found.value, cells) : refused(found.failure.sentence);
}

/** The same once rows are found, for a host that reads cells only then. */
export function planFound<T extends WritableTable>(found: Found<T>, cells: CellsOf<T>): Plan<T> {
  const taken = found.rows.map((row) => whyTaken(row, cells)).find((why) => why !== undefined);
  if (taken !== undefined) return refused(taken);
  const missing = found.rows.filter(({ at }) => at === undefined);
  // Rows that all stand were written before, with their cells: what a cell holds by now is someone's later word.
  if (found.rows.length > 0 && missing.length === 0) return { kind: 'already there' };
  const kept = found.cells.map((row) => whyStays(row, cells)).find((why) => why !== undefined);
  if (kept !== undefined) return refused(kept);
  const set = cellsToSet(found.cells, cells);
  const formula = set.find(({ table, at, column }) => cells.isFormula(table, at, column));
  if (formula !== undefined) return refused(whyFormula(formula));
  const places = placesFor(missing, cells);
  const rows = missing.map(({ table, row, cells: own }, index) => ({
    table,
    row,
    at: places[index] ?? table.height,
    cells: own,
  }));
  return rows.length + set.length === 0
    ? { kind: 'already there' }
    : { kind: 'write', rows, cells: set };
}

const refused = (sentence: string): { readonly kind: 'refused'; readonly sentence: string } => ({
  kind: 'refused',
  sentence,
});

/** Why a row may not be appended: its id stands with other cells. Undefined where it is free or the same. */
function whyTaken<T extends WritableTable>(
  { table, idColumn, id, cells, at }: FoundRow<T>,
  { row }: CellsOf<T>,
): string | undefined {
  if (at === undefined) return undefined;
  const there = row(table, at);
  const differs = [...cells].find(
    ([column, cell]) => column !== idColumn && !saysTheSame(there[column] ?? '', cell),
  );
  if (differs === undefined) return undefined;
  const [column, cell] = differs;
  return (
    `${table.name} already has a different row with ${headerAt(table, idColumn)} "${id}": ` +
    `${headerAt(table, column)} is ${said(there[column])} there, not ${said(cell)}. ` +
    'Nothing was written; look at that row first, then start again.'
  );
}

/** Why a row to clear may not be, or undefined. */
function whyStays<T extends WritableTable>(
  { table, at, removal }: FoundCells<T>,
  { row }: CellsOf<T>,
): string | undefined {
  if (removal === undefined) return undefined;
  const cells = row(table, at);
  return whyKept(removal, (header) => cells[columnOf(table, header) ?? -1] ?? '');
}

/** The cells that don't hold their value yet; of two values for one cell the later stands. */
function cellsToSet<T extends WritableTable>(
  found: readonly FoundCells<T>[],
  { row }: CellsOf<T>,
): CellToSet<T>[] {
  const set = new Map<T, Map<string, CellToSet<T>>>();
  for (const { table, idColumn, at, update, removal, cells } of found) {
    const mine = set.get(table) ?? new Map<string, CellToSet<T>>();
    set.set(table, mine);
    for (const [column, value] of cells) {
      const key = `${String(at)} ${String(column)}`;
      const before = row(table, at)[column] ?? '';
      mine.delete(key);
      if (holdsExactly(before, value)) continue;
      const isRemoved = removal !== undefined;
      mine.set(key, { table, update, idColumn, at, column, isRemoved, before, value });
    }
  }
  return [...set.values()].flatMap((mine) => [...mine.values()]);
}

const whyFormula = <T extends WritableTable>({ table, update, column }: CellToSet<T>): string =>
  `${table.name}, ${update.idColumn} "${update.id}": the cell under ${headerAt(table, column)} holds a formula, which is never written over. Put its value there instead, then try again.`;

const headerAt = ({ headers }: WritableTable, column: number): string =>
  (headers[column] ?? '').trim();

/** A cell as a sentence names it. */
const said = (cell: Cell = ''): string => (cell === '' ? 'blank' : shortened(cell));

import { compareNames, nameKey } from '../../domain/kernel/names.ts';
import { findTables } from '../find-tables.ts';
import type { Cell, TableData } from '../port.ts';
import { type TableKind, tableKinds, tables } from '../schema.ts';
import { keyHeaders, type NamedRow, namedRows, rowKey } from './table-keys.ts';

/** One row that two copies have differently. Nothing is lost: both versions stand here. */
export interface MergeConflict {
  readonly table: string;
  /** The row's id as a person reads it. */
  readonly id: string;
  /** Headers whose cells differ. */
  readonly differs: readonly string[];
  readonly kept: NamedRow;
  readonly setAside: NamedRow;
}

export interface MergedCopies {
  /** Every table of either copy, with the rows of both, in order of their ids. */
  readonly tables: readonly TableData[];
  readonly conflicts: readonly MergeConflict[];
}

/**
 * Brings two copies of a workbook together: the union of each table's rows by id. Where both have a
 * row and it differs, one version is kept and both are reported. Neither the order of the two copies
 * nor merging again changes the result.
 */
export function mergeCopies(one: readonly TableData[], other: readonly TableData[]): MergedCopies {
  const [first, second] = [findTables(one), findTables(other)];
  const conflicts: MergeConflict[] = [];
  const merged = tableKinds.flatMap((kind) => {
    const [a, b] = [first.get(kind), second.get(kind)];
    return a === undefined && b === undefined ? [] : [mergeTable(kind, a, b, conflicts)];
  });
  return { tables: merged, conflicts };
}

function mergeTable(
  kind: TableKind,
  one: TableData | undefined,
  other: TableData | undefined,
  conflicts: MergeConflict[],
): TableData {
  const headers = mergedHeaders(kind, one, other);
  const rows = new Map<string, NamedRow>();
  for (const row of [one, other].flatMap((table) =>
    table === undefined ? [] : namedRows(table),
  )) {
    const key = rowKey(row, kind);
    const before = rows.get(key);
    if (before === undefined) {
      rows.set(key, row);
      continue;
    }
    const differs = headers.filter(
      (header) => !sameCell(cellOf(before, header), cellOf(row, header)),
    );
    const [kept, setAside] =
      rank(before, headers) >= rank(row, headers) ? [before, row] : [row, before];
    rows.set(key, kept);
    if (differs.length > 0) {
      conflicts.push({ table: tables[kind].name, id: idOf(row, kind), differs, kept, setAside });
    }
  }
  const ordered = [...rows].sort(([a], [b]) => compareNames(a, b));
  return {
    name: tables[kind].name,
    headers,
    rows: ordered.map(([, row]) => headers.map((header) => cellOf(row, header))),
  };
}

/** Our headers in the schema's order, then either copy's own columns by name. */
function mergedHeaders(kind: TableKind, ...copies: readonly (TableData | undefined)[]): string[] {
  const found = new Map(
    copies
      .flatMap((table) => table?.headers ?? [])
      .sort()
      .map((header) => [nameKey(header), header]),
  );
  const ours = Object.values(tables[kind].columns).map(({ header }) => header);
  const known = ours.filter((header) => found.has(nameKey(header)));
  const added = [...found].filter(([key]) => !ours.some((header) => nameKey(header) === key));
  return [...known, ...added.map(([, header]) => header).sort(compareNames)];
}

const cellOf = (row: NamedRow, header: string): Cell => row.get(nameKey(header)) ?? '';

const sameCell = (a: Cell, b: Cell): boolean =>
  a === b || (typeof a === 'string' && typeof b === 'string' && a.trim() === b.trim());

/**
 * Which of two versions is kept: the one with more filled in, then the later text, so that "undone"
 * stands over "posted". Any rule serves that both sides follow alike.
 */
function rank(row: NamedRow, headers: readonly string[]): string {
  const cells = headers.map((header) => cellOf(row, header));
  const filled = cells.filter((cell) => cell !== '').length;
  return `${String(filled).padStart(4, '0')} ${JSON.stringify(cells.map((cell) => (typeof cell === 'string' ? cell.trim() : cell)))}`;
}

const idOf = (row: NamedRow, kind: TableKind): string =>
  keyHeaders(kind)
    .map((header) => String(cellOf(row, header)))
    .filter((part) => part !== '')
    .join(', ');

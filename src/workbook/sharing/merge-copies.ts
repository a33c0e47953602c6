import { compareNames, nameKey } from '../../domain/kernel/names.ts';
import { Trouble } from '../column.ts';
import { findTables } from '../find-tables.ts';
import type { Cell, TableData } from '../port.ts';
import { type TableKind, tableKinds, tables } from '../schema.ts';
import { cellOf, groupKey, groupName, type NamedRow, namedRows, rowKey } from './table-keys.ts';

/**
 * What two copies have differently: one row by its id, or all lines of one recipe. Nothing is lost:
 * both versions stand here.
 */
export interface MergeConflict {
  readonly kind: TableKind;
  /** The id or the recipe's name as a person reads it. */
  readonly id: string;
  /** Headers whose cells differ; none for a recipe whose lines differ. */
  readonly differs: readonly string[];
  /** Whether the version of the first copy is the one kept. */
  readonly keepsFirst: boolean;
  readonly kept: readonly NamedRow[];
  readonly setAside: readonly NamedRow[];
}

export interface MergedCopies {
  /** Every table of either copy, with the rows of both, in order of their ids. */
  readonly tables: readonly TableData[];
  readonly conflicts: readonly MergeConflict[];
}

/**
 * Brings two copies of a workbook together: the union of each table's rows by id, of recipes and
 * designs by name. Where both have one and it differs, one version is kept and both are reported.
 * Neither the order of the two copies nor merging again changes the result.
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
  const merged = groupsOf(kind, one);
  for (const [key, rows] of groupsOf(kind, other)) {
    const before = merged.get(key);
    if (before === undefined) {
      merged.set(key, rows);
      continue;
    }
    const keepsFirst = rank(before, kind, headers) >= rank(rows, kind, headers);
    const [kept, setAside] = keepsFirst ? [before, rows] : [rows, before];
    merged.set(key, kept);
    const differs = differing(kind, headers, kept, setAside);
    if (differs !== undefined) {
      const id = kept[0] === undefined ? key : groupName(kept[0], kind);
      conflicts.push({ kind, id, differs, keepsFirst, kept, setAside });
    }
  }
  const ordered = [...merged].sort(([a], [b]) => compareNames(a, b));
  return {
    name: tables[kind].name,
    headers,
    rows: ordered.flatMap(([, rows]) =>
      rows.map((row) => headers.map((header) => cellOf(row, header))),
    ),
  };
}

/** A table's rows by what they are merged by, those of one recipe in a settled order. */
export function groupsOf(kind: TableKind, table: TableData | undefined): Map<string, NamedRow[]> {
  const groups = new Map<string, NamedRow[]>();
  for (const row of table === undefined ? [] : namedRows(table)) {
    const key = groupKey(row, kind);
    const known = groups.get(key);
    if (known === undefined) groups.set(key, [row]);
    else known.push(row);
  }
  for (const rows of groups.values()) {
    rows.sort((a, b) => compareNames(orderOf(a, kind), orderOf(b, kind)));
  }
  return groups;
}

const orderOf = (row: NamedRow, kind: TableKind): string =>
  `${rowKey(row, kind)} ${JSON.stringify([...row.entries()].sort())}`;

/** Headers that differ, [] where whole lines do, or undefined where the versions say the same. */
function differing(
  kind: TableKind,
  headers: readonly string[],
  one: readonly NamedRow[],
  other: readonly NamedRow[],
): readonly string[] | undefined {
  if (one.length !== other.length) return [];
  const differs = headers.filter((header) =>
    one.some(
      (row, index) => !sameCell(kind, header, cellOf(row, header), cellOf(other[index], header)),
    ),
  );
  if (differs.length === 0) return undefined;
  return one.length === 1 ? differs : [];
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

/** Whether two cells say the same: a day is the same as a number of days and as text. */
function sameCell(kind: TableKind, header: string, a: Cell, b: Cell): boolean {
  if (plain(a) === plain(b)) return true;
  const column = Object.values(tables[kind].columns).find(
    (known) => nameKey(known.header) === nameKey(header),
  );
  if (column?.format !== 'date') return false;
  const [one, other] = [column.read(a), column.read(b)];
  return !(one instanceof Trouble) && one === other;
}

const plain = (cell: Cell): Cell => (typeof cell === 'string' ? cell.trim() : cell);

/**
 * Which of two versions is kept: the one with more filled in, then the later text, so that "undone"
 * stands over "posted". Any rule serves that both sides follow alike.
 */
function rank(rows: readonly NamedRow[], kind: TableKind, headers: readonly string[]): string {
  const cells = rows.map((row) => headers.map((header) => plain(cellOf(row, header))));
  const filled = cells.flat().filter((cell) => cell !== '').length;
  const state = kind === 'batches' ? stateOf(rows) : '';
  return `${state}${String(filled).padStart(6, '0')} ${JSON.stringify(cells)}`;
}

/** A batch that was taken back on one side is taken back. */
const stateOf = ([row]: readonly NamedRow[]): string =>
  nameKey(String(cellOf(row, tables.batches.columns.state.header))) === 'undone' ? '1' : '0';

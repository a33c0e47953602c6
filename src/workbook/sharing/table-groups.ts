import { compareNames, nameKey } from '../../domain/kernel/names.ts';
import type { Cell, TableData } from '../port.ts';
import { type TableKind, tables } from '../schema.ts';
import { idHeader, type NamedRow, rowKey } from './table-keys.ts';

/**
 * The rows of a table that are merged as one: a row by its id, or the lines of a recipe. A long ledger
 * has one group a line, so the cells stay where they are until somebody asks for them by header.
 */
export interface Group {
  /** The table's headers by `nameKey`. */
  readonly keys: readonly string[];
  readonly rows: (readonly Cell[])[];
}

/** A table's rows by what they are merged by; as in reading, those with nothing in our columns are left out. */
export function groupsOf(kind: TableKind, table: TableData | undefined): Map<string, Group> {
  const groups = new Map<string, Group>();
  const keys = table?.headers.map(nameKey) ?? [];
  const ours = new Set(Object.values(tables[kind].columns).map(({ header }) => nameKey(header)));
  const read = [...keys.keys()].filter((at) => ours.has(keys[at] ?? ''));
  const idAt = keys.lastIndexOf(nameKey(idHeader(kind)));
  for (const row of table?.rows ?? []) {
    if (read.every((at) => String(row[at] ?? '').trim() === '')) continue;
    const key = nameKey(String(row[idAt] ?? '').trim());
    const known = groups.get(key);
    if (known === undefined) groups.set(key, { keys, rows: [row] });
    else known.rows.push(row);
  }
  return groups;
}

/** A group's rows by header, those of one recipe in a settled order. */
export function namedRows({ keys, rows }: Group, kind: TableKind): NamedRow[] {
  const named = rows.map((row) => new Map(keys.map((key, at) => [key, row[at] ?? ''] as const)));
  if (named.length === 1) return named;
  return named
    .map((row) => ({ row, order: orderOf(row, kind) }))
    .sort((a, b) => compareNames(a.order, b.order))
    .map(({ row }) => row);
}

const orderOf = (row: NamedRow, kind: TableKind): string =>
  `${rowKey(row, kind)} ${JSON.stringify([...row.entries()].sort())}`;

/** Tells whether two groups hold the very same cells, row for row, wherever the columns of their tables stand. */
export function sameCells(
  one: TableData | undefined,
  other: TableData | undefined,
): (ours: Group, theirs: Group) => boolean {
  const [ours, theirs] = [one, other].map((table) => table?.headers.map(nameKey) ?? []);
  const pairs = [...new Set([...(ours ?? []), ...(theirs ?? [])])].map(
    (key) => [ours?.lastIndexOf(key) ?? -1, theirs?.lastIndexOf(key) ?? -1] as const,
  );
  const isSame = (a: readonly Cell[] = [], b: readonly Cell[] = []): boolean =>
    pairs.every(([at, there]) => (a[at] ?? '') === (b[there] ?? ''));
  return (a, b) =>
    a.rows.length === b.rows.length && a.rows.every((row, at) => isSame(row, b.rows[at]));
}

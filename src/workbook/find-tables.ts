import { nameKey } from '../domain/kernel/names.ts';
import type { TableData } from './port.ts';
import { Findings } from './read/findings.ts';
import { recogniseTable } from './read/recognise.ts';
import { type TableKind, tableKinds, tables } from './schema.ts';

/** The workbook's own names for our tables, told by their headers. */
export type TableNames = ReadonlyMap<TableKind, TableData>;

/** Finds our tables among all tables of a workbook, the likeliest of each kind; others are left alone. */
export function findTables(all: readonly TableData[]): TableNames {
  const found = new Map<TableKind, { readonly table: TableData; readonly likelihood: number }>();
  for (const table of all) {
    const { kind, likelihood } = likenessOf(table);
    if (kind === undefined || likelihood <= (found.get(kind)?.likelihood ?? 0)) continue;
    found.set(kind, { table, likelihood });
  }
  return new Map([...found].map(([kind, { table }]) => [kind, table]));
}

/** More than any table has columns. */
const OUR_NAME = 1000;

/**
 * Which of our tables one looks like, and how much: our own name for it counts most, then the number
 * of known headers. A sheet of answers with a Design column is not taken for Designs that way.
 */
export function likenessOf(table: TableData): {
  readonly kind: TableKind | undefined;
  readonly likelihood: number;
} {
  const known = recogniseTable([table.headers], 1, new Findings());
  if (known === undefined) return { kind: undefined, likelihood: 0 };
  const isNamed = kindNamed(table) === known.kind;
  // A list of the maker's own may have one column called as ours is: only BOOK is told that it is ours.
  if (!isNamed && known.position.size < 2) return { kind: undefined, likelihood: 0 };
  return { kind: known.kind, likelihood: known.position.size + (isNamed ? OUR_NAME : 0) };
}

/** The kind whose name a table bears, whatever its headers; a name of an older format too. */
export const kindNamed = ({ name }: Pick<TableData, 'name'>): TableKind | undefined =>
  olderNames.get(nameKey(name)) ??
  tableKinds.find((kind) => nameKey(tables[kind].name) === nameKey(name));

const olderNames: ReadonlyMap<string, TableKind> = new Map([[nameKey('Moves'), 'moves']]);

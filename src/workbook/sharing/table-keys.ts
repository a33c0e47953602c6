import { nameKey } from '../../domain/kernel/names.ts';
import type { Cell, TableData } from '../port.ts';
import { type TableKind, tables, uniqueColumn } from '../schema.ts';

/** What tells two rows of one table apart, in the order in which a merged table lists them. */
const keyColumns: Readonly<Record<'colours' | 'layers', readonly string[]>> = {
  colours: ['colour', 'ingredient'],
  layers: ['design', 'layer', 'part', 'item', 'mold'],
};

/** The headers that name a row: its id, or for recipes and layers what the line is of. */
export function keyHeaders(kind: TableKind): string[] {
  const keys =
    kind === 'colours' || kind === 'layers' ? keyColumns[kind] : [uniqueColumn[kind] ?? ''];
  const columns = Object.entries(tables[kind].columns);
  return keys.flatMap((key) =>
    columns.filter(([name]) => name === key).map(([, column]) => column.header),
  );
}

/** A row by header; headers are told in any case, as everywhere. */
export type NamedRow = ReadonlyMap<string, Cell>;

/** The rows of a table that hold anything, each by `nameKey` of its headers. */
export function namedRows(table: TableData): NamedRow[] {
  const headers = table.headers.map(nameKey);
  return table.rows
    .map((row) => new Map(headers.map((header, at) => [header, row[at] ?? ''] as const)))
    .filter((row) => [...row.values()].some((cell) => String(cell).trim() !== ''));
}

/** The text that names a row among those of its table. */
export function rowKey(row: NamedRow, kind: TableKind): string {
  return JSON.stringify(
    keyHeaders(kind).map((header) => nameKey(String(row.get(nameKey(header)) ?? ''))),
  );
}

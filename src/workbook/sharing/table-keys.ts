import { nameKey } from '../../domain/kernel/names.ts';
import type { Cell } from '../port.ts';
import { type TableKind, tables, uniqueColumn } from '../schema.ts';

/** What tells two lines of one recipe, or two prices of one material, apart, in the order in which a merged table lists them. */
const lineColumns: Readonly<
  Record<'colours' | 'layers' | 'priceBreaks' | 'sets', readonly string[]>
> = {
  colours: ['colour', 'ingredient'],
  layers: ['design', 'layer', 'part', 'item', 'mold'],
  priceBreaks: ['material', 'fromPacks'],
  sets: ['set', 'item'],
};

/** Whether a table's rows are lines of recipes, several under one name. */
export const isOfRecipes = (kind: TableKind): kind is keyof typeof lineColumns =>
  kind in lineColumns;

/** The header of a row's id; of a recipe's line, that of the recipe's name. */
export function idHeader(kind: TableKind): string {
  const id = isOfRecipes(kind) ? lineColumns[kind][0] : uniqueColumn[kind];
  return headersOf(kind, [id ?? ''])[0] ?? '';
}

const headersOf = (kind: TableKind, names: readonly string[]): string[] =>
  Object.entries(tables[kind].columns).flatMap(([name, { header }]) =>
    names.includes(name) ? [header] : [],
  );

/** A row by header; headers are told in any case, as everywhere. */
export type NamedRow = ReadonlyMap<string, Cell>;

export const cellOf = (row: NamedRow | undefined, header: string): Cell =>
  row?.get(nameKey(header)) ?? '';

/** The id or the recipe's name as a person reads it. */
export const groupName = (row: NamedRow, kind: TableKind): string =>
  String(cellOf(row, idHeader(kind))).trim();

/** The text that orders a row among those of its recipe. */
export const rowKey = (row: NamedRow, kind: TableKind): string =>
  JSON.stringify(
    (isOfRecipes(kind) ? headersOf(kind, lineColumns[kind]) : [idHeader(kind)]).map((header) =>
      nameKey(String(cellOf(row, header))),
    ),
  );

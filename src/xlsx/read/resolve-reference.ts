import { parseRange, parseSheetRange } from '../address.ts';
import type { RangeImage, TableImage } from '../image.ts';
import type { StoredName } from '../parts/workbook-parts.ts';

export interface SheetRange {
  readonly sheet: string;
  readonly range: RangeImage;
}

/** What a reference may speak of. */
export interface ReferenceScope {
  readonly tables: readonly { readonly sheet: string; readonly table: TableImage }[];
  readonly names: readonly StoredName[];
}

/**
 * The cells that a reference means: "$A$1:$A$9" (on `sheet`), "Other!A1", a name, "Table[Column]",
 * INDIRECT of a text with one of these, or "A1:INDEX(A1:A9,…)", whose filled part is taken whole.
 * Undefined for anything else that must be computed.
 */
export function resolveReference(
  text: string,
  sheet: string,
  scope: ReferenceScope,
  depth = 0,
): SheetRange | undefined {
  const formula = text.trim().replace(/^=/, '');
  const here = parseRange(formula);
  if (here) return { sheet, range: here };
  const there = parseSheetRange(formula);
  if (there) return there;
  const indirect = /^INDIRECT\("((?:[^"]|"")*)"\)$/i.exec(formula)?.[1];
  if (indirect !== undefined && depth < 5) {
    return resolveReference(indirect.replaceAll('""', '"'), sheet, scope, depth + 1);
  }
  const all = /^[^:()]+:INDEX\(([^(),]+),/i.exec(formula)?.[1];
  if (all !== undefined) return resolveReference(all, sheet, scope, depth + 1);
  const withHeaders = HEADERS_AND_DATA.exec(formula)?.[1];
  if (withHeaders !== undefined) return tableColumn(withHeaders, '#All', scope);
  const column = /^([^[\]\s]+)\[([^[\]]*)\]$/.exec(formula);
  if (column) return tableColumn(column[1] ?? '', column[2] ?? '', scope);
  const name = scope.names.find((each) => !each.special && same(each.name, formula));
  if (name && depth < 5) return resolveReference(name.refersTo, sheet, scope, depth + 1);
  return wholeTable(formula, scope);
}

/** A table but its total row, which an image's range leaves out in any case. */
const HEADERS_AND_DATA = /^([^[\]\s]+)\[\s*\[#Headers\]\s*,\s*\[#Data\]\s*\]$/i;

function tableColumn(tableName: string, column: string, scope: ReferenceScope) {
  const found = scope.tables.find(({ table }) => same(table.name, tableName));
  if (!found) return undefined;
  const { sheet, table } = found;
  if (same(column, '#All')) return { sheet, range: table.range };
  if (column === '' || same(column, '#Data')) return wholeTable(tableName, scope);
  const plain = column.replace(/'(.)/g, '$1');
  const index = table.headers.findIndex((header) => same(header, plain));
  if (index < 0) return undefined;
  const at = table.range.startColumn + index;
  const range = {
    ...table.range,
    startRow: table.range.startRow + 1,
    startColumn: at,
    endColumn: at,
  };
  return { sheet, range };
}

function wholeTable(name: string, scope: ReferenceScope): SheetRange | undefined {
  const found = scope.tables.find(({ table }) => same(table.name, name));
  if (!found) return undefined;
  const { sheet, table } = found;
  return { sheet, range: { ...table.range, startRow: table.range.startRow + 1 } };
}

function same(a: string, b: string): boolean {
  return a.toUpperCase() === b.toUpperCase();
}

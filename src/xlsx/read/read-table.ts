import { parseRange } from '../address.ts';
import type { RangeImage, TableImage } from '../image.ts';
import type { Package } from '../parts/package.ts';
import { Refusal } from '../refusal.ts';
import type { SheetPart } from '../parts/workbook-parts.ts';
import { child, childrenOf, parseXml, type XmlElement } from '../xml/xml-tree.ts';
import { typedText } from '../xml/xml-text.ts';

/** A table as its part describes it. */
export interface StoredTable {
  readonly part: string;
  readonly root: XmlElement;
  readonly name: string;
  /** The whole `ref`, with header and total rows where the table has them. */
  readonly ref: RangeImage;
  readonly headers: readonly string[];
  readonly hasHeaderRow: boolean;
  readonly totalRows: number;
}

/** Reads one xl/tables/table*.xml. */
function readTable(part: string, source: string): StoredTable {
  const root = parseXml(part, source);
  const { attributes } = root;
  const name = attributes['displayName'] ?? attributes['name'] ?? '';
  const ref = parseRange(attributes['ref'] ?? '');
  const headers = childrenOf(child(root, 'tableColumns'), 'tableColumn').map((column) =>
    typedText(column.attributes['name'] ?? ''),
  );
  if (!ref || headers.length !== ref.endColumn - ref.startColumn + 1) {
    throw new Refusal(`This workbook is damaged: the place of its table "${name}" is unclear.`);
  }
  return {
    part,
    root,
    name,
    ref,
    headers,
    hasHeaderRow: attributes['headerRowCount'] !== '0',
    totalRows: Number(attributes['totalsRowCount'] ?? 0),
  };
}

/** What the page shows of a table: header and body, without its total row. */
export function tableImage(table: StoredTable): TableImage {
  const { name, ref, headers, totalRows } = table;
  return { name, headers, range: { ...ref, endRow: ref.endRow - totalRows } };
}

/** The tables of one sheet, in the order of its links. */
export function sheetTables(pack: Package, sheet: SheetPart): readonly StoredTable[] {
  return pack
    .links(sheet.part)
    .filter((link) => link.kind === 'table' && !link.outside)
    .map((link) => readTable(link.target, pack.text(link.target)));
}

import { rangesOf } from '../address.ts';
import type { RangeImage } from '../image.ts';
import { MAX_COLUMNS } from '../limits.ts';
import { sheetHighlights, type StoredHighlight } from './sheet-highlights.ts';
import type { SheetVisitor, StoredRow } from './sheet-walk.ts';
import type { Attributes } from '../xml/xml-walk.ts';
import { isOn, type XmlElement } from '../xml/xml-tree.ts';

/** A drop-down whose source is still a formula. */
export interface StoredValidation {
  readonly ranges: readonly RangeImage[];
  readonly source: string;
}

/** What a worksheet part holds beside its cells. */
export interface SheetFeatures {
  readonly frozenRows: number;
  readonly frozenColumns: number;
  readonly columnWidths: Readonly<Record<number, number>>;
  readonly rowHeights: Readonly<Record<number, number>>;
  readonly gridLines: boolean;
  readonly tabColor: Pick<XmlElement, 'attributes'> | undefined;
  readonly merges: readonly RangeImage[];
  readonly validations: readonly StoredValidation[];
  readonly highlights: readonly StoredHighlight[];
  /** Conditional formats of kinds that the page does not show. */
  readonly otherFormats: number;
  /** How often each element that the page cannot show stands in the part. */
  readonly counts: ReadonlyMap<string, number>;
}

/** Width records that cover the rest of the sheet say nothing of single columns. */
const WIDEST_RECORD = 256;

/** A visitor that gathers a sheet's features, and what it gathered. */
export function sheetFeatures(): { visitor: SheetVisitor; result: () => SheetFeatures } {
  const columnWidths: Record<number, number> = {};
  const rowHeights: Record<number, number> = {};
  const merges: RangeImage[] = [];
  const counts = new Map<string, number>();
  const list = listValidations();
  const formats = sheetHighlights();
  let frozen = { frozenRows: 0, frozenColumns: 0 };
  let gridLines = true;
  let tabColor: SheetFeatures['tabColor'];
  const visitor: SheetVisitor = {
    open(name, attributes) {
      counts.set(name, (counts.get(name) ?? 0) + 1);
      if (name === 'col') addWidths(columnWidths, attributes);
      else if (name === 'pane') frozen = frozenOf(attributes);
      else if (name === 'sheetView') gridLines = isOn(attributes['showGridLines'], true);
      else if (name === 'tabColor') tabColor = { attributes };
      else if (name === 'mergeCell') merges.push(...rangesOf(attributes['ref']));
      else list.open(name, attributes);
      formats.open(name, attributes);
    },
    row: (row) => {
      addHeight(rowHeights, row);
    },
    text: (text) => {
      list.text(text);
      formats.text(text);
    },
    close: (name) => {
      list.close(name);
      formats.close(name);
    },
  };
  const result = () => ({
    ...frozen,
    ...formats.result(),
    columnWidths,
    rowHeights,
    gridLines,
    tabColor,
    merges,
    counts,
    validations: list.found,
  });
  return { visitor, result };
}

/** Drop-downs from `dataValidation` and from its later form in the extension list. */
function listValidations() {
  const found: StoredValidation[] = [];
  let current: { sqref: string; source: string } | undefined;
  let capture: 'source' | 'sqref' | undefined;
  return {
    found,
    open(name: string, attributes: Attributes) {
      if (/(^|:)dataValidation$/.test(name) && attributes['type'] === 'list') {
        current = { sqref: attributes['sqref'] ?? '', source: '' };
      } else if (/(^|:)formula1$/.test(name)) capture = 'source';
      else if (name.endsWith(':sqref')) capture = 'sqref';
    },
    text(text: string) {
      if (current && capture) current[capture] += text;
    },
    close(name: string) {
      if (/(^|:)formula1$/.test(name) || name.endsWith(':sqref')) capture = undefined;
      if (!/(^|:)dataValidation$/.test(name) || !current) return;
      found.push({ ranges: rangesOf(current.sqref), source: current.source.trim() });
      current = undefined;
    },
  };
}

function frozenOf(attributes: Attributes) {
  if (!(attributes['state'] ?? '').startsWith('frozen')) return { frozenRows: 0, frozenColumns: 0 };
  return {
    frozenRows: Math.trunc(Number(attributes['ySplit'] ?? 0)),
    frozenColumns: Math.trunc(Number(attributes['xSplit'] ?? 0)),
  };
}

function addWidths(widths: Record<number, number>, attributes: Attributes): void {
  const width = Number(attributes['width']);
  const first = Number(attributes['min']);
  const last = Math.min(Number(attributes['max']), MAX_COLUMNS);
  if (!(width >= 0) || !(first >= 1) || last - first > WIDEST_RECORD) return;
  // The stored width counts characters of 7 pixels, padding included (ECMA-376 part 1, 18.3.1.13).
  const pixels = isOn(attributes['hidden']) ? 0 : Math.trunc(((256 * width + 18) / 256) * 7);
  for (let column = first; column <= last; column += 1) widths[column - 1] = pixels;
}

/** Heights are stored in points, of which 72 make an inch; the page counts 96 pixels to one. */
function addHeight(heights: Record<number, number>, { row, attributes }: StoredRow): void {
  const points = Number(attributes['ht']);
  if (isOn(attributes['hidden'])) heights[row] = 0;
  else if (isOn(attributes['customHeight']) && points > 0) {
    heights[row] = Math.round((points * 96) / 72);
  }
}

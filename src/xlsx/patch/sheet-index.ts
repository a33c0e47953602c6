import { cellName, parseRange } from '../address.ts';
import type { RangeImage } from '../image.ts';
import { plainRow } from '../read/plain-row.ts';
import { spillOf } from '../read/read-sheet.ts';
import { applySplices, withAttribute, type Splice } from '../xml/splice.ts';
import { walkSheet, type StoredCell, type StoredRow } from '../read/sheet-walk.ts';

/** Where everything stands that a patch of one sheet may touch. */
export interface SheetIndex {
  readonly source: string;
  readonly rows: readonly StoredRow[];
  /** The cells of a row in their order. */
  cellsIn(row: number): readonly StoredCell[];
  /** Every cell with a formula. */
  readonly formulas: readonly StoredCell[];
  readonly data: { readonly start: number; readonly closeStart: number; readonly end: number };
  readonly dimension: (Splice & { readonly range: RangeImage }) | undefined;
  /** Style numbers of whole columns. */
  readonly columnStyles: ReadonlyMap<number, number>;
  readonly merges: readonly RangeImage[];
  /** Formulas whose result fills more than their own cell. */
  readonly arrays: readonly { readonly anchor: StoredCell; readonly range: RangeImage }[];
}

/** Indexes a sheet; rows and cells that left their address out get it written in first. */
export function indexSheet(part: string, source: string): SheetIndex {
  const index = indexOnce(part, source);
  const missing = addressSplices(index);
  return missing.length === 0 ? index : indexOnce(part, applySplices(source, missing));
}

function indexOnce(part: string, source: string): SheetIndex {
  const rows: StoredRow[] = [];
  const cells = rowCells(source);
  const formulas: StoredCell[] = [];
  const arrays: { anchor: StoredCell; range: RangeImage }[] = [];
  const columnStyles = new Map<number, number>();
  const merges: RangeImage[] = [];
  let data = { start: 0, closeStart: 0, end: 0 };
  let dimension: SheetIndex['dimension'];
  walkSheet(part, source, {
    row(row) {
      rows.push(row);
      cells.row(row);
    },
    cell(cell) {
      cells.cell(cell);
      if (cell.formula) formulas.push(cell);
      const range = spillOf(cell);
      if (range) arrays.push({ anchor: cell, range });
    },
    open(name, attributes, start, end) {
      const range = parseRange(attributes['ref'] ?? '');
      if (name === 'dimension' && range)
        dimension = { start, end, text: source.slice(start, end), range };
      else if (name === 'mergeCell' && range) merges.push(range);
      else if (name === 'sheetData') data = { start, closeStart: end, end };
      else if (name === 'col' && attributes['style']) addColumnStyles(columnStyles, attributes);
    },
    close(name, start, end) {
      if (name === 'sheetData') data = { ...data, closeStart: start, end };
    },
  });
  const { cellsIn } = cells;
  return { source, rows, cellsIn, formulas, data, dimension, columnStyles, merges, arrays };
}

/** Keeps the cells of each row but those of plain rows, a million maybe, which are read again when asked for. */
function rowCells(source: string) {
  const kept = new Map<number, readonly StoredCell[]>();
  const plainStarts = new Map<number, number>();
  let own: StoredCell[] = [];
  return {
    cell: (cell: StoredCell) => own.push(cell),
    row({ row, start, plain }: StoredRow) {
      if (plain) plainStarts.set(row, start);
      else kept.set(row, own);
      own = [];
    },
    cellsIn(row: number): readonly StoredCell[] {
      const start = plainStarts.get(row);
      const cells = kept.get(row) ?? (start === undefined ? [] : plainRow(source, start)?.cells);
      if (cells && start !== undefined) kept.set(row, cells);
      return cells ?? [];
    },
  };
}

function addColumnStyles(
  styles: Map<number, number>,
  attributes: Readonly<Record<string, string>>,
) {
  const last = Math.min(Number(attributes['max']), Number(attributes['min']) + 16_384);
  for (let column = Number(attributes['min']); column <= last; column += 1) {
    styles.set(column - 1, Number(attributes['style']));
  }
}

function addressSplices({ source, rows, cellsIn }: SheetIndex): readonly Splice[] {
  const set = (start: number, end: number, address: string): Splice => ({
    start,
    end,
    text: withAttribute(source.slice(start, end), 'r', address),
  });
  const bareRows = rows
    .filter((row) => row.attributes['r'] === undefined)
    .map((row) => set(row.start, row.openEnd, String(row.row + 1)));
  const bareCells = rows
    .filter((row) => !row.plain)
    .flatMap((row) => cellsIn(row.row).filter((cell) => !cell.addressed))
    .map((cell) => {
      const openEnd = source.indexOf('>', cell.start) + 1;
      return set(cell.start, openEnd, cellName(cell.row, cell.column));
    });
  return [...bareRows, ...bareCells];
}

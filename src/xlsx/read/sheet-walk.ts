import { columnOfCell } from '../address.ts';
import { MAX_CELLS, MAX_COLUMNS, MAX_ROWS } from '../limits.ts';
import { plainRow, type PlainRow } from './plain-row.ts';
import { Refusal } from '../refusal.ts';
import { walkXml, type Attributes, type XmlVisitor } from '../xml/xml-walk.ts';

/** A formula as stored, with its attributes (t, ref, si). */
export interface StoredFormula {
  readonly text: string;
  readonly attributes: Attributes;
  /** Where the `<f>` stands in the sheet's text. */
  readonly start: number;
  readonly end: number;
}

/** One `<c>` as stored, with its place in the sheet's text. */
export interface StoredCell {
  readonly row: number;
  readonly column: number;
  /** The `t`: how `value` is to be read. */
  readonly type: string | undefined;
  /** The `s`; 0 is plain. */
  readonly style: number;
  /** The `cm`. */
  readonly metadata: string | undefined;
  /** False when the file left the cell's address to be counted. */
  readonly addressed: boolean;
  /** What `<v>` holds, or the text of an inline string. */
  readonly value: string | undefined;
  readonly formula: StoredFormula | undefined;
  readonly start: number;
  readonly end: number;
}

/** One `<row>` with its place in the sheet's text. */
export interface StoredRow {
  readonly row: number;
  readonly attributes: Attributes;
  readonly start: number;
  readonly openEnd: number;
  readonly closeStart: number;
  readonly end: number;
  /** True when `plainRow` can read it. */
  readonly plain: boolean;
}

export interface SheetVisitor {
  cell?(cell: StoredCell): void;
  row?(row: StoredRow): void;
  /** Elements outside `<sheetData>`, and `sheetData` itself. */
  open?(name: string, attributes: Attributes, start: number, end: number): void;
  close?(name: string, start: number, end: number): void;
  text?(text: string): void;
}

/** How many cells may still be read; counted down over all sheets of a workbook. */
export interface CellRoom {
  left: number;
}

export const roomForCells = (): CellRoom => ({ left: MAX_CELLS });

/** Walks one worksheet part; cells and rows without an address take the next place, as the format allows. */
export function walkSheet(
  part: string,
  source: string,
  visitor: SheetVisitor,
  room = roomForCells(),
): void {
  const data = dataVisitor(part, visitor, room);
  let inData = false;
  /** Where a plain row may begin: just after `<sheetData>` or a row in it. */
  let between = -1;
  const walker: XmlVisitor = {
    open(name, attributes, start, end, depth) {
      if (inData) data.open(name, attributes, start, end, depth);
      else visitor.open?.(name, attributes, start, end);
      if (name !== 'sheetData' || inData) return;
      inData = true;
      if (depth === 1) between = end;
    },
    text(text) {
      if (inData) data.text(text);
      else visitor.text?.(text);
    },
    close(name, start, end, depth) {
      inData &&= name !== 'sheetData';
      if (inData) data.close(name, start, end, depth);
      else visitor.close?.(name, start, end);
      if (inData && name === 'row' && depth === 2) between = end;
    },
  };
  walkXml(part, source, walker, {
    pause: (at) => endOf(source, inData ? '</row>' : '<sheetData>', at),
    landing(at) {
      if (!inData || at !== between) return at;
      for (let row; (row = plainRow(source, at)) && data.take(row);) at = row.row.end;
      return (between = at);
    },
  });
}

function endOf(source: string, tag: string, from: number): number {
  const at = source.indexOf(tag, from);
  return at < 0 ? source.length : at + tag.length;
}

interface DataVisitor extends Required<XmlVisitor> {
  /** Takes a row that was read at once; false when it does not belong here. */
  take(row: PlainRow): boolean;
}

/** Puts rows and cells together from what stands inside `<sheetData>`. */
function dataVisitor(part: string, visitor: SheetVisitor, room: CellRoom): DataVisitor {
  let row: Omit<StoredRow, 'closeStart' | 'end'> | undefined;
  let cell: { attributes: Attributes; start: number } | undefined;
  let [lastRow, lastColumn, inPhonetic] = [-1, -1, false];
  let capture: 'value' | 'formula' | undefined;
  let value: string | undefined;
  let formula: { text: string; attributes: Attributes; start: number; end: number } | undefined;
  const openCell = (attributes: Attributes, start: number) => {
    if ((room.left -= 1) < 0) throw new Refusal(`This workbook has too many cells (to "${part}").`);
    lastColumn = columnOf(attributes['r'], row?.row ?? 0, lastColumn + 1);
    cell = { attributes, start };
    value = formula = undefined;
  };
  return {
    take(plain) {
      if (plain.row.row <= lastRow || plain.row.row >= MAX_ROWS) return false;
      if ((room.left -= plain.cells.length) < 0) return false;
      [row, lastRow] = [plain.row, plain.row.row];
      lastColumn = plain.cells.at(-1)?.column ?? -1;
      if (visitor.cell) plain.cells.forEach(visitor.cell, visitor);
      visitor.row?.(plain.row);
      return true;
    },
    open(name, attributes, start, end) {
      if (name === 'row') {
        lastRow = rowOf(attributes['r'], lastRow);
        row = { row: lastRow, attributes, start, openEnd: end, plain: false };
        lastColumn = -1;
      } else if (name === 'c') openCell(attributes, start);
      else if (name === 'v' || name === 'is') value ??= '';
      else if (name === 'rPh') inPhonetic = true;
      else if (name === 'f') formula = { text: '', attributes, start, end };
      if (name === 'v' || (name === 't' && !inPhonetic)) capture = 'value';
      else capture = name === 'f' ? 'formula' : undefined;
    },
    text(text) {
      if (capture === 'value') value = (value ?? '') + text;
      else if (capture === 'formula' && formula) formula.text += text;
    },
    close(name, start, end) {
      capture = undefined;
      if (name === 'f' && formula) formula.end = end;
      else if (name === 'rPh') inPhonetic = false;
      else if (name === 'row' && row) visitor.row?.({ ...row, closeStart: start, end });
      else if (name === 'c' && row && cell) {
        visitor.cell?.(storedCell(row.row, lastColumn, cell, value, formula, end));
      }
    },
  };
}

function rowOf(r: string | undefined, last: number): number {
  const row = r === undefined ? last + 1 : Number(r) - 1;
  if (!Number.isInteger(row) || row <= last || row >= MAX_ROWS) {
    throw new Refusal(`This workbook holds a row "${r ?? row + 1}" that no sheet can have.`);
  }
  return row;
}

/** Keeps what a cell needs and lets its attributes go: a large sheet holds a million of these. */
function storedCell(
  row: number,
  column: number,
  { attributes, start }: { readonly attributes: Attributes; readonly start: number },
  value: string | undefined,
  formula: StoredFormula | undefined,
  end: number,
): StoredCell {
  return {
    row,
    column,
    type: attributes['t'],
    style: Number(attributes['s'] ?? 0),
    metadata: attributes['cm'],
    addressed: attributes['r'] !== undefined,
    value,
    formula,
    start,
    end,
  };
}

function columnOf(r: string | undefined, row: number, next: number): number {
  const column = r === undefined ? next : columnOfCell(r, row);
  if (column === undefined || column < next || column >= MAX_COLUMNS) {
    throw new Refusal(`This workbook holds a cell "${r ?? ''}" that no sheet can have.`);
  }
  return column;
}

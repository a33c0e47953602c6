import type { RangeImage } from './image.ts';
import { MAX_COLUMNS, MAX_ROWS } from './limits.ts';

export interface CellAddress {
  readonly row: number;
  readonly column: number;
}

/** "A" for 0, "AA" for 26. */
export function columnName(column: number): string {
  let name = '';
  for (let rest = column + 1; rest > 0; rest = Math.floor((rest - 1) / 26)) {
    name = String.fromCharCode(65 + ((rest - 1) % 26)) + name;
  }
  return name;
}

/** 0 for "A"; letters only, upper or lower case. */
export function columnIndex(name: string): number {
  let index = 0;
  for (const letter of name.toUpperCase()) index = index * 26 + letter.charCodeAt(0) - 64;
  return index - 1;
}

/** "B3" for row 2, column 1. */
export function cellName(row: number, column: number): string {
  return `${columnName(column)}${row + 1}`;
}

/** "A1:B3", or "A1" for a single cell. */
export function rangeName(range: RangeImage): string {
  const first = cellName(range.startRow, range.startColumn);
  const last = cellName(range.endRow, range.endColumn);
  return first === last ? first : `${first}:${last}`;
}

/** Reads "B3" or "$B$3"; undefined when it is no cell of a sheet. */
export function parseCell(text: string): CellAddress | undefined {
  const match = /^\$?([A-Za-z]{1,3})\$?([1-9]\d{0,6})$/.exec(text);
  if (!match?.[1] || !match[2]) return undefined;
  const column = columnIndex(match[1]);
  const row = Number(match[2]) - 1;
  return column < MAX_COLUMNS && row < MAX_ROWS ? { row, column } : undefined;
}

/** The column of an address such as "B3" whose row is known; undefined when it is not of that row. */
export function columnOfCell(text: string, row: number): number | undefined {
  let column = 0;
  let at = 0;
  for (; at < 3; at += 1) {
    const letter = text.charCodeAt(at) - 64;
    if (!(letter >= 1 && letter <= 26)) break;
    column = column * 26 + letter;
  }
  return at > 0 && text.slice(at) === String(row + 1) ? column - 1 : undefined;
}

/** Reads "A1", "A1:B3", "A:C" or "2:5", dollars allowed; undefined when it is none of these. */
export function parseRange(text: string): RangeImage | undefined {
  const [from = '', to = from, more] = text.split(':');
  if (more !== undefined) return undefined;
  const first = parseCell(from);
  const last = parseCell(to);
  if (first && last) return ordered(first, last);
  return parseLines(from.replace('$', ''), to.replace('$', ''));
}

/** Every range of a list such as "A1:B3 D5". */
export function rangesOf(list: string | undefined): readonly RangeImage[] {
  return (list ?? '').split(/\s+/).flatMap((text) => parseRange(text) ?? []);
}

/** Whether two ranges share a cell. */
export function overlaps(a: RangeImage, b: RangeImage): boolean {
  return (
    a.startRow <= b.endRow &&
    b.startRow <= a.endRow &&
    a.startColumn <= b.endColumn &&
    b.startColumn <= a.endColumn
  );
}

/** Whether a cell lies in a range. */
export function contains(range: RangeImage, row: number, column: number): boolean {
  return (
    row >= range.startRow &&
    row <= range.endRow &&
    column >= range.startColumn &&
    column <= range.endColumn
  );
}

/** A sheet's name as a formula writes it, quoted where it must be. */
export function sheetPrefix(sheet: string): string {
  return /^[A-Za-z_][A-Za-z0-9_]*$/.test(sheet) && !parseCell(sheet)
    ? `${sheet}!`
    : `'${sheet.replaceAll("'", "''")}'!`;
}

/** Splits "'My sheet'!$A$1:$B$2" into its sheet and range; undefined for anything else. */
export function parseSheetRange(text: string): { sheet: string; range: RangeImage } | undefined {
  const match = /^(?:'((?:[^']|'')+)'|([^'![\]]+))!([^!]+)$/.exec(text);
  const sheet = match?.[1]?.replaceAll("''", "'") ?? match?.[2];
  const range = match?.[3] === undefined ? undefined : parseRange(match[3]);
  return sheet === undefined || range === undefined ? undefined : { sheet, range };
}

function ordered(a: CellAddress, b: CellAddress): RangeImage {
  return {
    startRow: Math.min(a.row, b.row),
    startColumn: Math.min(a.column, b.column),
    endRow: Math.max(a.row, b.row),
    endColumn: Math.max(a.column, b.column),
  };
}

function parseLines(from: string, to: string): RangeImage | undefined {
  if (/^[A-Za-z]{1,3}$/.test(from) && /^[A-Za-z]{1,3}$/.test(to)) {
    const a = { row: 0, column: columnIndex(from) };
    const b = { row: MAX_ROWS - 1, column: columnIndex(to) };
    return b.column < MAX_COLUMNS ? ordered(a, b) : undefined;
  }
  if (/^[1-9]\d{0,6}$/.test(from) && /^[1-9]\d{0,6}$/.test(to)) {
    const a = { row: Number(from) - 1, column: 0 };
    const b = { row: Number(to) - 1, column: MAX_COLUMNS - 1 };
    return Math.max(a.row, b.row) < MAX_ROWS ? ordered(a, b) : undefined;
  }
  return undefined;
}

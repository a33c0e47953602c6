import { type Day, readDay } from '../src/domain/kernel/day.ts';
import { howToTypeDay } from '../src/domain/kernel/typed-day.ts';
import { isNumberAsText, NUMBER_AS_TEXT, quoted } from '../src/domain/kernel/names.ts';
import { errorIn } from '../src/workbook/column.ts';
import type { Cell } from '../src/workbook/port.ts';
import { CellFailure } from './failure.ts';

/**
 * Reads arguments as spreadsheets pass them: a scalar, a one-cell range as a 1×1 array, "", null or 0 for a
 * blank cell (by platform and build), undefined or null for one left out. So a 0 is read as blank by every reader of
 * what can't be 0; only `numberIn` and the cells of a range can. Each answers undefined for a blank, and throws a sentence
 * that names the argument.
 */

/** The first cell of an argument, whatever it holds: enough to look for a book's handle in it. */
export const firstCell = (argument: unknown): unknown =>
  Array.isArray(argument) ? (argument as unknown[]).flat()[0] : argument;

/** The single cell of an argument; "" where it was left out. */
function cellIn(argument: unknown, what: string): Cell {
  const cell = Array.isArray(argument) ? onlyCell(argument, what) : argument;
  if (cell === undefined || cell === null) return '';
  const error = errorIn(cell);
  if (error !== undefined)
    throw new CellFailure('#VALUE!', `${what} is the error ${error}. Mend the cell it comes from.`);
  if (isPlainCell(cell)) return cell;
  throw new CellFailure('#VALUE!', `${what} must be one value. Give one cell or a plain value.`);
}

function onlyCell(range: readonly unknown[], what: string): unknown {
  const first: unknown = range[0];
  if (range.length === 1 && Array.isArray(first) && first.length === 1) return first[0];
  throw new CellFailure(
    '#VALUE!',
    `${what} must be one cell, not a range of cells. Give one cell.`,
  );
}

const isBlank = (cell: Cell): boolean => typeof cell === 'string' && cell.trim() === '';

/** Whether a cell is blank where no 0 can be meant. */
const isBlankOrZero = (cell: Cell): boolean => cell === 0 || isBlank(cell);

export function nameIn(argument: unknown, what: string): string | undefined {
  const cell = cellIn(argument, what);
  return isBlankOrZero(cell) ? undefined : String(cell).trim();
}

/** A number; 0 is one. */
export function numberIn(argument: unknown, what: string): number | undefined {
  const cell = cellIn(argument, what);
  if (isBlank(cell)) return undefined;
  if (typeof cell !== 'number' || !Number.isFinite(cell)) {
    const says = isNumberAsText(cell)
      ? NUMBER_AS_TEXT
      : 'which is not a number. Give a plain number';
    throw new CellFailure('#VALUE!', `${what} is ${quoted(cell)}, ${says}.`);
  }
  return cell;
}

/** A number other than 0, such as bars to make. */
export const countIn = (argument: unknown, what: string): number | undefined =>
  numberIn(argument, what) || undefined;

/** TRUE or FALSE. */
export function truthIn(argument: unknown, what: string): boolean | undefined {
  const cell = cellIn(argument, what);
  if (isBlank(cell)) return undefined;
  if (typeof cell === 'boolean') return cell;
  if (cell === 0 || cell === 1) return cell === 1;
  throw new CellFailure('#VALUE!', `${what} is ${quoted(cell)}. Give TRUE or FALSE.`);
}

/** A date as serial number or ISO text. */
export function dayIn(argument: unknown, what: string): Day | undefined {
  const cell = cellIn(argument, what);
  if (isBlankOrZero(cell)) return undefined;
  const day = readDay(cell);
  if (day === undefined) {
    throw new CellFailure(
      '#VALUE!',
      `${what} is ${quoted(cell)}, which is not a date. ${howToTypeDay(String(cell))}.`,
    );
  }
  return day;
}

/** A range of cells, of which each may be blank; one value counts as a range of one. Undefined where it is left out. */
export function rangeIn(argument: unknown, what: string): Cell[][] | undefined {
  if (argument === undefined || argument === null) return undefined;
  if (!Array.isArray(argument)) return [[cellIn(argument, what)]];
  return argument.map((row: unknown, down) =>
    (Array.isArray(row) ? row : [row]).map((cell: unknown, across) => {
      if (isPlainCell(cell) && errorIn(cell) === undefined) return cell;
      if (cell === undefined || cell === null) return '';
      throw new CellFailure(
        '#VALUE!',
        `${what} holds an error or something else that is no plain value in row ${down + 1}, column ${across + 1}. Mend that cell.`,
      );
    }),
  );
}

/** The names in a range, row by row; "" where a cell is blank. */
export const namesIn = (argument: unknown, what: string): string[] | undefined =>
  rangeIn(argument, what)
    ?.flat()
    .map((cell) => (isBlankOrZero(cell) ? '' : String(cell)));

/** The names down a column, "" where a cell is blank; undefined where all are. */
export function namesDown(argument: unknown, what: string): string[] | undefined {
  const names = eachDown(argument, what, nameIn);
  return names.every((name) => name === undefined) ? undefined : names.map((name) => name ?? '');
}

/** The numbers other than 0 down a column, undefined where a cell is blank; of one blank cell alone undefined. */
export function countsDown(argument: unknown, what: string): (number | undefined)[] | undefined {
  const counts = eachDown(argument, what, countIn);
  return counts.length === 1 && counts[0] === undefined ? undefined : counts;
}

/** What stands in each cell of a column, read one by one; a single cell is a column of one. */
function eachDown<T>(
  argument: unknown,
  what: string,
  read: (cell: unknown, what: string) => T,
): T[] {
  if (!Array.isArray(argument) || argument.length < 2) return [read(argument, what)];
  return argument.map((row: unknown, down) =>
    read(Array.isArray(row) ? [row] : row, `${what} in row ${down + 1}`),
  );
}

const isPlainCell = (cell: unknown): cell is Cell =>
  typeof cell === 'string' || typeof cell === 'number' || typeof cell === 'boolean';

/** The ranges of a call: Excel hands repeating ranges over as one list of ranges, other callers one by one. */
export function tablesIn(cellArguments: unknown): unknown[][][] {
  return (cellArguments as readonly unknown[])
    .flatMap((argument) => (isListOfRanges(argument) ? argument : [argument]))
    .filter((argument) => !isNothing(argument))
    .map((argument) => (Array.isArray(argument) ? rowsOf(argument) : [[argument]]));
}

const rowsOf = (range: readonly unknown[]): unknown[][] =>
  range.every(Array.isArray) ? (range as unknown[][]) : range.map((row) => [row].flat());

/** A blank cell, or no cells at all, as a host hands over where no table is given. */
function isNothing(argument: unknown): boolean {
  if (Array.isArray(argument)) return argument.length < 2 && argument.every(isNothing);
  return argument === undefined || argument === null || argument === '' || argument === 0;
}

function isListOfRanges(argument: unknown): argument is unknown[][][] {
  const first: unknown = Array.isArray(argument) ? argument[0] : undefined;
  return Array.isArray(first) && Array.isArray(first[0]);
}

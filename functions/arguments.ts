import { type Day, readDay } from '../src/domain/kernel/day.ts';
import { howToTypeDay } from '../src/domain/kernel/typed-day.ts';
import { type Exact, exact } from '../src/domain/kernel/exact.ts';
import { isNumberAsText, NUMBER_AS_TEXT, quoted } from '../src/domain/kernel/names.ts';
import { errorIn } from '../src/workbook/column.ts';
import type { Cell } from '../src/workbook/port.ts';
import { today } from './clock.ts';
import { CellFailure } from './failure.ts';

/**
 * Reads arguments as spreadsheets pass them: a scalar, a one-cell range as a 1×1 array, "", null or 0 for a
 * blank cell (by platform and build), undefined or null for one left out. So a 0 is read as blank by every reader of
 * what can't be 0; only the numbers of `numberArgument` and its like can. Each reader throws a sentence that names the
 * argument.
 */

/** The first cell of an argument, whatever it holds: enough to look for a book's handle in it. */
export const firstCell = (argument: unknown): unknown =>
  Array.isArray(argument) ? (argument as unknown[]).flat()[0] : argument;

/** The single cell of an argument; "" where it was left out. */
function cellArgument(argument: unknown, what: string): Cell {
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

/** A name that must be given. */
export function nameArgument(argument: unknown, what: string): string {
  const name = optionalName(argument, what);
  if (name === undefined) throw new CellFailure('#VALUE!', `${what} is blank. Give its name.`);
  return name;
}

export function optionalName(argument: unknown, what: string): string | undefined {
  const cell = cellArgument(argument, what);
  return isBlankOrZero(cell) ? undefined : String(cell).trim();
}

/** A number that must be given; 0 is one. */
export function numberArgument(argument: unknown, what: string): number {
  const number = optionalNumber(argument, what);
  if (number === undefined) throw new CellFailure('#VALUE!', `${what} is blank. Give a number.`);
  return number;
}

/** A number other than 0 that must be given. */
export function countArgument(argument: unknown, what: string): number {
  const number = optionalCount(argument, what);
  if (number === undefined) {
    throw new CellFailure('#VALUE!', `${what} is blank or 0. Give a number above 0.`);
  }
  return number;
}

/** A number other than 0, such as bars to make. */
export const optionalCount = (argument: unknown, what: string): number | undefined =>
  optionalNumber(argument, what) || undefined;

export function optionalNumber(argument: unknown, what: string): number | undefined {
  const cell = cellArgument(argument, what);
  if (isBlank(cell)) return undefined;
  if (typeof cell !== 'number' || !Number.isFinite(cell)) {
    const says = isNumberAsText(cell)
      ? NUMBER_AS_TEXT
      : 'which is not a number. Give a plain number';
    throw new CellFailure('#VALUE!', `${what} is ${quoted(cell)}, ${says}.`);
  }
  return cell;
}

export const exactArgument = (argument: unknown, what: string): Exact =>
  exact(numberArgument(argument, what));

export function optionalExact(argument: unknown, what: string): Exact | undefined {
  const number = optionalNumber(argument, what);
  return number === undefined ? undefined : exact(number);
}

/** TRUE or FALSE; blank takes the default. */
export function booleanArgument(argument: unknown, what: string, standard: boolean): boolean {
  const cell = cellArgument(argument, what);
  if (isBlank(cell)) return standard;
  if (typeof cell === 'boolean') return cell;
  if (cell === 0 || cell === 1) return cell === 1;
  throw new CellFailure('#VALUE!', `${what} is ${quoted(cell)}. Give TRUE or FALSE.`);
}

/** A date as serial number or ISO text; blank is today. */
export function dayArgument(argument: unknown, what: string): Day {
  const cell = cellArgument(argument, what);
  if (isBlankOrZero(cell)) return today();
  const day = readDay(cell);
  if (day === undefined) {
    throw new CellFailure(
      '#VALUE!',
      `${what} is ${quoted(cell)}, which is not a date. ${howToTypeDay(String(cell))}.`,
    );
  }
  return day;
}

/** A range of cells that must be given; one value counts as a range of one. */
export function rangeArgument(argument: unknown, what: string): Cell[][] {
  if (argument === undefined || argument === null) {
    throw new CellFailure('#VALUE!', `${what} is left out. Give a range of cells.`);
  }
  if (!Array.isArray(argument)) return [[cellArgument(argument, what)]];
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
export const namesArgument = (argument: unknown, what: string): string[] =>
  rangeArgument(argument, what)
    .flat()
    .map((cell) => (isBlankOrZero(cell) ? '' : String(cell)));

const isPlainCell = (cell: unknown): cell is Cell =>
  typeof cell === 'string' || typeof cell === 'number' || typeof cell === 'boolean';

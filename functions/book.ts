import { recogniseTables, readBook } from '../src/workbook/read/read-book.ts';
import { settle } from './answer.ts';
import { remember, remembered } from './books.ts';

/**
 * Reads your tables once, checks every row, and answers a handle that the other functions take.
 * @customfunction BOOK
 * @param {any[][][]} tables Your tables with their headers, in any order, such as Materials[#All].
 * @returns {string} The handle: the same tables give the same handle.
 */
export function book(tables: any[][][]): string {
  const recognised = settle(recogniseTables(tables));
  if (remembered(recognised.handle) === undefined) remember(settle(readBook(recognised)));
  return recognised.handle;
}

/** The ranges of a call: Excel hands repeating ranges over as one list of ranges, other callers one by one. */
export function rangesOf(cellArguments: readonly unknown[]): unknown[][][] {
  return cellArguments
    .flatMap((argument) => (isListOfRanges(argument) ? argument : [argument]))
    .filter((argument) => argument !== undefined && argument !== null && argument !== '')
    .map((argument) => (Array.isArray(argument) ? argument.map(asRow) : [[argument]]));
}

const asRow = (row: unknown): unknown[] => (Array.isArray(row) ? row : [row]);

function isListOfRanges(argument: unknown): argument is unknown[][][] {
  const first: unknown = Array.isArray(argument) ? argument[0] : undefined;
  return Array.isArray(first) && Array.isArray(first[0]);
}

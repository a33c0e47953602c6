import { indexAfter, indexOf } from '../src/domain/stock/ledger-index.ts';
import { recogniseTables, readBook } from '../src/workbook/read/read-book.ts';
import { settle } from './answer.ts';
import { carryAnswers } from './asked-before.ts';
import { lastRemembered, remember, remembered } from './books.ts';

/**
 * Reads your tables once, checks every row, and answers a handle that the other functions take.
 * @customfunction BOOK
 * @param {any[][][]} tables Your tables with their headers, in any order, such as Materials[[#Headers],[#Data]].
 * @returns {string} The handle: the same tables give the same handle.
 */
export function book(tables: any[][][]): string {
  const before = lastRemembered();
  const recognised = settle(recogniseTables(tables, before));
  if (remembered(recognised.handle) === undefined) {
    const read = settle(readBook(recognised, before));
    const touched = before && indexAfter(before, read);
    if (before !== undefined && touched !== undefined) carryAnswers(before, read, touched);
    // Sorted by item here, so that no answer has to go through the whole ledger.
    indexOf(read);
    remember(read);
  }
  return recognised.handle;
}

/** The ranges of a call: Excel hands repeating ranges over as one list of ranges, other callers one by one. */
export function rangesOf(cellArguments: readonly unknown[]): unknown[][][] {
  return cellArguments
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

import type { Book } from '../src/domain/book/book.ts';
import { quoted } from '../src/domain/kernel/names.ts';
import { errorIn } from '../src/workbook/column.ts';
import { firstCell, nameIn } from './arguments.ts';
import { CellFailure } from './failure.ts';

/** Enough for the workbooks open side by side, and for the state before an edit. */
const ALWAYS_KEPT = 4;
/** More are kept while they are short: a workbook may hold a book for each of several what-ifs. */
const MOST_BOOKS = 16;
const MOST_MOVES = 50_000;

/** Books by handle, the one used last at the end. */
const books = new Map<string, Book>();
let last: Book | undefined;

/** Handles that were asked for and are in no memory; each is told of once, until a book is read under it. */
const missing = new Set<string>();
let tellMissing: (handle: string) => void = () => undefined;

/**
 * Has the listener hear of each handle that a function is asked about from now on and that no memory holds, once
 * until a book is read under it: a host can then recalculate the cell that names the book. One listener.
 */
export function onMissingBook(listener: (handle: string) => void): void {
  missing.clear();
  tellMissing = listener;
}

function noteMissing(handle: string): void {
  if (missing.has(handle)) return;
  missing.add(handle);
  tellMissing(handle);
}

export function remember(book: Book): void {
  last = book;
  missing.delete(book.handle);
  books.delete(book.handle);
  books.set(book.handle, book);
  for (const handle of books.keys()) {
    if (books.size <= ALWAYS_KEPT || (books.size <= MOST_BOOKS && movesKept() <= MOST_MOVES)) break;
    books.delete(handle);
  }
}

function movesKept(): number {
  let moves = 0;
  for (const { ledger } of books.values()) moves += ledger.length;
  return moves;
}

export function remembered(handle: string): Book | undefined {
  const book = books.get(handle);
  if (book !== undefined && book !== last) remember(book);
  return book;
}

/** The book used last: most often the state before an edit. */
export const lastRemembered = (): Book | undefined => last;

/** The book that an argument names, undefined where that is blank. Throws #N/A where it is not in memory (yet). */
export function bookIn(argument: unknown, what: string): Book | undefined {
  const error = errorIn(firstCell(argument));
  if (error !== undefined)
    throw new CellFailure(
      '#N/A',
      `The cell named Book holds the error ${error}: it says what to mend.`,
    );
  const handle = nameIn(argument, what);
  if (handle === undefined) return undefined;
  const book = remembered(handle);
  if (book !== undefined) return book;
  // Any text may be a handle of another version, which heals too; what is no text never was one.
  const isText = typeof firstCell(argument) === 'string';
  if (isText) noteMissing(handle);
  if (/^book [0-9a-f]{16}$/u.test(handle)) {
    throw new CellFailure(
      '#N/A',
      'The book is not read yet: recalculate the cell named Book (select it, press F2, then Enter).',
    );
  }
  throw new CellFailure(
    isText ? '#N/A' : '#VALUE!',
    `${quoted(handle)} is not a book. Give the cell named Book, which holds POUR.BOOK.`,
  );
}

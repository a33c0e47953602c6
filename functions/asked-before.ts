import type { Book } from '../src/domain/book/book.ts';
import { withItemsAsked } from '../src/domain/stock/items-asked.ts';
import { firstCell } from './arguments.ts';
import { remembered } from './books.ts';
import { today } from './clock.ts';
import type { FunctionRecord } from './records/record.ts';
import type { WorksheetFunction } from './worksheet-function.ts';

interface KeptAnswer {
  readonly answer: unknown;
  /** The items whose histories it was worked out from, where it hangs on no other line of the book. */
  readonly items?: ReadonlySet<string>;
}

/** Answers of one book by question; those of no book together. A book let go takes its answers along. */
const answers = new WeakMap<object, Map<string, KeptAnswer>>();
const noBook = {};

/** A question of more cells than this is worked out afresh: its key would cost more than it saves. */
const MOST_CELLS = 200;
const MOST_ANSWERS = 5_000;

/**
 * The same function, which works out each question once a day and book: a sheet asks for a whole list
 * in each of the cells that show one line of it. Failures are not kept, since a later call may mend them.
 */
export function askedBefore(
  id: string,
  { takes, restsOn }: Pick<FunctionRecord, 'takes' | 'restsOn'>,
  worksheetFunction: WorksheetFunction,
): WorksheetFunction {
  const bookAt = Object.values(takes).findIndex(({ kind }) => kind === 'book');
  const restsOnDay = restsOn.includes('day');
  const restsOnItems = restsOn.includes('items');
  return (...cellArguments) => {
    const book = bookIn(cellArguments[bookAt]);
    const question = questionOf(cellArguments, book);
    if (question === undefined) return worksheetFunction(...cellArguments);
    const key = `${id} ${restsOnDay ? String(today()) : ''} ${question}`;
    const known = answersOf(book ?? noBook);
    const found = known.get(key);
    if (found !== undefined) return copyOf(found.answer);
    const { answer, items } = withItemsAsked(() => worksheetFunction(...cellArguments));
    if (known.size >= MOST_ANSWERS) known.clear();
    known.set(key, { answer: copyOf(answer), ...(restsOnItems && { items }) });
    return answer;
  };
}

/**
 * Hands on to a book the answers of the one before it, which differs from it in its ledger alone, where they
 * were worked out from items of which none was touched.
 */
export function carryAnswers(before: Book, book: Book, touched: ReadonlySet<string>): void {
  const known = answersOf(book);
  const changed = [...touched];
  for (const [key, kept] of answersOf(before)) {
    const { items } = kept;
    if (items !== undefined && !changed.some((item) => items.has(item))) known.set(key, kept);
  }
}

function answersOf(book: object): Map<string, KeptAnswer> {
  const known = answers.get(book) ?? new Map<string, KeptAnswer>();
  answers.set(book, known);
  return known;
}

/** Rows of its own for each caller, who may well take the headers off or sort them. */
const copyOf = (answer: unknown): unknown =>
  Array.isArray(answer)
    ? answer.map((row: unknown) => (Array.isArray(row) ? [...(row as unknown[])] : row))
    : answer;

/** The book that an argument names, where it is in memory; the function itself says where it is not. */
function bookIn(argument: unknown): Book | undefined {
  const cell = firstCell(argument);
  return typeof cell === 'string' ? remembered(cell.trim()) : undefined;
}

/**
 * The arguments as text, their types kept apart and the book under one name, whichever it is; undefined
 * for too many cells or what is no cell.
 */
function questionOf(cells: readonly unknown[], book: Book | undefined): string | undefined {
  let question = '';
  for (const cell of cells) {
    const isTooLong =
      Array.isArray(cell) && (cell.length > MOST_CELLS || cell.flat().length > MOST_CELLS);
    const text = isTooLong ? undefined : textOf(cell, book);
    if (text === undefined) return undefined;
    question += text;
  }
  return question;
}

/** A text tells its length, so that no text looks like several. */
function textOf(cell: unknown, book: Book | undefined): string | undefined {
  if (typeof cell === 'string')
    return cell.trim() === book?.handle ? 'book,' : `"${String(cell.length)} ${cell}`;
  if (Array.isArray(cell)) {
    const texts = questionOf(cell, book);
    return texts === undefined ? undefined : `[${texts}]`;
  }
  if (typeof cell === 'object' && cell !== null) return undefined;
  return `${typeof cell} ${String(cell)},`;
}

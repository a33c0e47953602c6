import { remembered } from './books.ts';
import { today } from './clock.ts';

type WorksheetFunction = (...cellArguments: unknown[]) => unknown;

/** Answers of one book by question; those of no book together. A book let go takes its answers along. */
const answers = new WeakMap<object, Map<string, unknown>>();
const noBook = {};

/** A question of more cells than this is worked out afresh: its key would cost more than it saves. */
const MOST_CELLS = 200;
const MOST_ANSWERS = 5_000;

/**
 * The same function, which works out each question once a day and book: a sheet asks for a whole list
 * in each of the cells that show one line of it. Failures are not kept, since a later call may mend them.
 */
export function askedBefore(id: string, worksheetFunction: WorksheetFunction): WorksheetFunction {
  return (...cellArguments) => {
    const question = questionOf(cellArguments);
    if (question === undefined) return worksheetFunction(...cellArguments);
    const key = `${id} ${String(today())} ${question}`;
    const book = cellArguments.map(bookOf).find((found) => found !== undefined) ?? noBook;
    const known = answers.get(book) ?? new Map<string, unknown>();
    answers.set(book, known);
    if (known.has(key)) return copyOf(known.get(key));
    const answer = worksheetFunction(...cellArguments);
    if (known.size >= MOST_ANSWERS) known.clear();
    known.set(key, copyOf(answer));
    return answer;
  };
}

/** Rows of its own for each caller, who may well take the headers off or sort them. */
const copyOf = (answer: unknown): unknown =>
  Array.isArray(answer)
    ? answer.map((row: unknown) => (Array.isArray(row) ? [...(row as unknown[])] : row))
    : answer;

function bookOf(argument: unknown): object | undefined {
  const cell: unknown = Array.isArray(argument) ? (argument as unknown[]).flat()[0] : argument;
  return typeof cell === 'string' ? remembered(cell.trim()) : undefined;
}

/** The arguments as text, their types kept apart; undefined for too many cells or what is no cell. */
function questionOf(cellArguments: readonly unknown[]): string | undefined {
  const rows = cellArguments.flatMap((argument) => (Array.isArray(argument) ? argument : []));
  if (rows.length > MOST_CELLS || rows.flat().length > MOST_CELLS) return undefined;
  const texts = cellArguments.map(textOf);
  return texts.includes(undefined) ? undefined : texts.join();
}

function textOf(cell: unknown): string | undefined {
  if (Array.isArray(cell)) {
    const texts = cell.map(textOf);
    return texts.includes(undefined) ? undefined : `[${texts.join()}]`;
  }
  if (typeof cell === 'object' && cell !== null) return undefined;
  return `${typeof cell} ${JSON.stringify(String(cell))}`;
}

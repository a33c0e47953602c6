import type { Book } from '../../src/domain/book/book.ts';
import { findDesign } from '../../src/domain/book/find.ts';
import { nameKey, quoted } from '../../src/domain/kernel/names.ts';
import { moneyIn, readTyped, readWhole } from '../typed-number.ts';
import type { TypedSale } from './draft.ts';

/** Rows brought from a sheet: what they say, and what is wrong with any of them, a sentence each. */
export interface PastedRows {
  readonly lines: readonly TypedSale[];
  readonly problems: readonly string[];
}

/** More rows than any stall has; beyond it a whole sheet was copied by accident. */
const MOST_ROWS = 200;

/**
 * Reads rows of design, bars and price, parted by tabs as a sheet copies them (or by semicolons). A
 * first row of headers and blank rows are passed over; a price left out is the design's own.
 */
export function readPasted(text: string, book: Book): PastedRows {
  const rows = text
    .split(/\r\n|\r|\n/u)
    .map((row, index) => ({ number: index + 1, cells: cellsOf(row) }))
    .filter(({ cells }) => cells.length > 0)
    .filter(({ cells }, index) => index > 0 || !isHeader(cells));
  if (rows.length === 0) return { lines: [], problems: ['There are no rows here to take.'] };
  if (rows.length > MOST_ROWS) {
    return {
      lines: [],
      problems: [`These are ${String(rows.length)} rows. Copy only those of one selling day.`],
    };
  }
  const read = rows.map(({ number, cells }) => readRow(number, cells, book));
  return {
    lines: read.flatMap((row) => (typeof row === 'string' ? [] : [row])),
    problems: read.filter((row) => typeof row === 'string'),
  };
}

function cellsOf(row: string): string[] {
  const cells = row.split(row.includes('\t') ? '\t' : ';').map((cell) => cell.trim());
  while (cells.at(-1) === '') cells.pop();
  return cells;
}

const isHeader = ([first = '', second = '']: readonly string[]): boolean =>
  nameKey(first) === 'design' && !/\d/u.test(second);

/** The row's line, or what is wrong with it. */
function readRow(number: number, cells: readonly string[], book: Book): TypedSale | string {
  const [name = '', bars = '', price = '', ...more] = cells;
  const inRow = (sentence: string): string => `Row ${String(number)}: ${sentence}`;
  if (more.length > 0) {
    return inRow(`it has ${String(cells.length)} cells. Give design, bars and price only.`);
  }
  const design = findDesign(book, name);
  if (!design.ok) return inRow(design.failure.sentence);
  const whole = readWhole(bars, `Bars of ${quoted(design.value.name)}`, 1);
  if (!whole.ok) return inRow(whole.failure.sentence);
  const what = `Price of ${quoted(design.value.name)}`;
  const asked = price === '' ? undefined : readTyped(price, what, moneyIn(book.settings.currency));
  if (asked?.ok === false) return inRow(asked.failure.sentence);
  return {
    design: design.value.name,
    bars: String(whole.value),
    price: asked && price,
  };
}

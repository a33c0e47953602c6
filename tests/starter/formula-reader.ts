import { dayOf } from '../../src/domain/kernel/day.ts';
import { functions } from '../../functions/index.ts';
import type { NewWorkbook } from '../../src/xlsx/write/new-workbook.ts';
import type { Cell, TableData } from '../../src/workbook/port.ts';
import { type Blank, handedOver } from '../support/three-blanks.ts';

/** What a cell holds; null where it is blank, which a text of no letters is not. */
export type Held = Cell | null;

/**
 * Works a stored formula's text out anew: a small reader of its own, sharing nothing with the code
 * that wrote the text, so that text and shown value are held against each other.
 */
export type Value = Held | readonly (readonly Held[])[] | CellError;

export class CellError {
  readonly code: string;
  constructor(code: string) {
    this.code = code;
  }
}

export interface Sheets {
  cell(sheet: string, row: number, column: number): Held;
  table(name: string): readonly (readonly Held[])[];
  /** The cell named Book. */
  readonly book: Cell;
}

/** What the file shows in each cell, spills with them. */
export function shownIn(book: NewWorkbook, tables: readonly TableData[], handle: Cell): Sheets {
  const values = new Map<string, Cell>();
  const key = (sheet: string, row: number, column: number) =>
    [sheet, String(row), String(column)].join('!');
  for (const { name, cells = [], tables: own = [] } of book.sheets) {
    for (const { row, columns, rows } of own) {
      [columns.map(({ header }) => header), ...rows].forEach((line, down) => {
        line.forEach((value, right) => {
          if (typeof value !== 'object' && value !== '')
            values.set(key(name, row + down, right), value);
        });
      });
    }
    for (const { row, column, value, formula, spill = [[value]] } of cells) {
      if (formula === undefined && value === '') continue;
      spill.forEach((line, down) => {
        line.forEach((each, right) => values.set(key(name, row + down, column + right), each));
      });
    }
  }
  return {
    cell: (sheet, row, column) => values.get(key(sheet, row, column)) ?? null,
    table: (name) => {
      const found = tables.find((table) => table.name === name);
      if (found === undefined) throw new Error(`no table ${name}`);
      return [
        found.headers,
        ...found.rows.map((row) => row.map((cell) => (cell === '' ? null : cell))),
      ];
    },
    book: handle,
  };
}

const TOKEN =
  /\s*("(?:[^"]|"")*"|'[^']+'!|[A-Za-z]+\[\[#Headers\],\[#Data\]\]|[A-Za-z]+\[[A-Za-z ]+\]|POUR\.[A-Z]+(?=\()|[A-Z]+(?=\()|\$?[A-Z]{1,2}\$?\d+|Book|\d+(?:\.\d+)?|<>|<=|>=|[-+*/&=<>(),:])/y;

/** The value of a formula on a sheet, in a host that hands blank cells to our functions as `blank`. */
export function readFormula(
  formula: string,
  sheet: string,
  sheets: Sheets,
  blank: Blank = '',
): Value {
  const tokens: string[] = [];
  TOKEN.lastIndex = 1;
  while (TOKEN.lastIndex < formula.length) {
    const at = TOKEN.lastIndex;
    const match = TOKEN.exec(formula);
    if (match?.[1] === undefined) throw new Error(`unread: ${formula.slice(at)}`);
    tokens.push(match[1]);
  }
  const reader = new Reader(tokens, sheet, sheets, blank);
  return reader.whole();
}

class Reader {
  private at = 0;
  private readonly tokens: readonly string[];
  private readonly sheet: string;
  private readonly sheets: Sheets;
  private readonly blank: Blank;

  constructor(tokens: readonly string[], sheet: string, sheets: Sheets, blank: Blank) {
    this.blank = blank;
    this.tokens = tokens;
    this.sheet = sheet;
    this.sheets = sheets;
  }

  whole(): Value {
    const value = this.compared();
    if (this.at < this.tokens.length)
      throw new Error(`left: ${this.tokens.slice(this.at).join('')}`);
    return value;
  }

  private compared(): Value {
    return this.chain(['=', '<>', '<', '<=', '>', '>='], () =>
      this.chain(['&'], () =>
        this.chain(['+', '-'], () => this.chain(['*', '/'], () => this.one())),
      ),
    );
  }

  private chain(signs: readonly string[], next: () => Value): Value {
    let left = next();
    while (signs.includes(this.tokens[this.at] ?? '')) {
      const sign = this.take();
      left = combine(left, sign, next());
    }
    return left;
  }

  private one(): Value {
    const token = this.take();
    if (token === '(') {
      const inside = this.compared();
      this.take();
      return inside;
    }
    if (token.startsWith('"')) return token.slice(1, -1).replaceAll('""', '"');
    if (/^\d/u.test(token)) return Number(token);
    if (token === 'Book') return this.sheets.book;
    if (token.includes('[')) return this.sheets.table(token.slice(0, token.indexOf('[')));
    if (/\[[A-Za-z ]+\]$/u.test(token)) return this.column(token.slice(0, -1));
    if (token.endsWith("'!")) return this.reference(this.take(), token.slice(1, -2));
    if (this.tokens[this.at] === '(') return this.call(token);
    return this.reference(token, this.sheet);
  }

  private column(reference: string): Value {
    const [table = '', header = ''] = reference.split('[');
    const [headers = [], ...rows] = this.sheets.table(table);
    return rows.map((row) => [row[headers.indexOf(header)] ?? null]);
  }

  private reference(first: string, sheet: string): Value {
    const from = placeOf(first);
    if (this.tokens[this.at] !== ':') return this.sheets.cell(sheet, from.row, from.column);
    this.take();
    const to = placeOf(this.take());
    return Array.from({ length: to.row - from.row + 1 }, (_, down) =>
      Array.from({ length: to.column - from.column + 1 }, (__, right) =>
        this.sheets.cell(sheet, from.row + down, from.column + right),
      ),
    );
  }

  private call(name: string): Value {
    this.take();
    const given: Value[] = [];
    while (this.tokens[this.at] !== ')') {
      given.push(this.compared());
      if (this.tokens[this.at] === ',') this.take();
    }
    this.take();
    return name.startsWith('POUR.') ? ask(name.slice(5), given, this.blank) : native(name, given);
  }

  private take(): string {
    const token = this.tokens[this.at];
    if (token === undefined) throw new Error('the formula ends too soon');
    this.at += 1;
    return token;
  }
}

function placeOf(reference: string): { row: number; column: number } {
  const [, letters = '', digits = ''] = /^\$?([A-Z]+)\$?(\d+)$/u.exec(reference) ?? [];
  const column = [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
  return { row: Number(digits) - 1, column };
}

function ask(id: string, given: readonly Value[], blank: Blank): Value {
  const error = given.find((each) => each instanceof CellError);
  if (error !== undefined) return error;
  try {
    const handed =
      id === 'BOOK' ? handedOver(id, given, blank) : given.map((each) => filled(each, blank));
    return functions[id]?.(...handed) as Value;
  } catch (thrown) {
    return new CellError((thrown as { code?: string }).code ?? String(thrown));
  }
}

/** Blank cells as the host hands them over, in a range too. */
const filled = (given: unknown, blank: Blank): unknown =>
  Array.isArray(given) ? given.map((each: unknown) => filled(each, blank)) : (given ?? blank);

const NUMERIC: Readonly<Record<string, (numbers: readonly number[]) => number>> = {
  COUNT: (numbers) => numbers.length,
  SUM: (numbers) => numbers.reduce((a, b) => a + b, 0),
  MAX: (numbers) => (numbers.length === 0 ? 0 : Math.max(...numbers)),
};

/** What is done with a text; an error stays one. */
const TEXTUAL: Readonly<Record<string, (text: string, from: number, length: number) => Cell>> = {
  LEN: (text) => text.length,
  LEFT: (text, length) => text.slice(0, length),
  MID: (text, from, length) => text.slice(from - 1, from - 1 + length),
  RIGHT: (text, length) => text.slice(-length),
};

function native(name: string, given: readonly Value[]): Value {
  const [first = '', second = '', third = ''] = given;
  const textual = TEXTUAL[name];
  if (textual !== undefined) {
    return first instanceof CellError
      ? first
      : textual(String(first ?? ''), Number(second), Number(third));
  }
  if (name === 'DATE') {
    const error = given.find((each) => each instanceof CellError);
    return error ?? dayOf(Number(first), Number(second), Number(third));
  }
  const rows = Array.isArray(first) ? (first as readonly (readonly Held[])[]) : [];
  if (name === 'IF') return first instanceof CellError ? first : first === true ? second : third;
  if (name === 'IFERROR') return first instanceof CellError ? second : first;
  if (name === 'ISERROR') return first instanceof CellError;
  if (name === 'ISNA') return first instanceof CellError && first.code === '#N/A';
  if (name === 'COUNTIF') {
    // As the workbook uses it, for texts that are not blank.
    return rows.flat().filter((cell) => typeof cell === 'string' && cell !== '').length;
  }
  if (name === 'LEFT') {
    return first instanceof CellError ? first : String(first).slice(0, Number(second));
  }
  if (name === 'INDEX') {
    if (first instanceof CellError) return first;
    if (second instanceof CellError) return second;
    const column = given.length > 2 ? Number(third) : 1;
    const found = rows[Number(second) - 1]?.[column - 1];
    return found === undefined ? new CellError('#REF!') : found;
  }
  if (name === 'MATCH') {
    const wanted = String(first ?? '').toLowerCase();
    const found = (second as readonly (readonly Held[])[])
      .flat()
      .findIndex((cell) => String(cell ?? '').toLowerCase() === wanted);
    return found < 0 ? new CellError('#N/A') : found + 1;
  }
  const count = NUMERIC[name];
  if (count === undefined) throw new Error(`the reader does not know ${name}`);
  return count(
    given.flatMap((each) =>
      (Array.isArray(each) ? (each as readonly (readonly Held[])[]).flat() : [each]).filter(
        (cell) => typeof cell === 'number',
      ),
    ),
  );
}

function combine(left: Value, sign: string, right: Value): Value {
  if (left instanceof CellError) return left;
  if (right instanceof CellError) return right;
  if (sign === '&') return `${String(left ?? '')}${String(right ?? '')}`;
  // A blank cell is 0 to a sum and beside a number, and no letters beside a text.
  const isSum = '+-*/'.includes(sign);
  const [x, y] = [
    left ?? (isSum || typeof right === 'number' ? 0 : ''),
    right ?? (isSum || typeof left === 'number' ? 0 : ''),
  ];
  const [a, b] = typeof x === 'number' && typeof y === 'number' ? [x, y] : [undefined, undefined];
  if (isSum) {
    if (a === undefined || b === undefined) return new CellError('#VALUE!');
    if (sign === '/') return b === 0 ? new CellError('#DIV/0!') : a / b;
    return sign === '+' ? a + b : sign === '-' ? a - b : a * b;
  }
  const order = a === undefined || b === undefined ? compareTexts(x, y) : Math.sign(a - b);
  const holds = { '=': order === 0, '<>': order !== 0, '<': order < 0, '>': order > 0 }[sign];
  return holds ?? (sign === '<=' ? order <= 0 : order >= 0);
}

const compareTexts = (a: Value, b: Value): number => {
  const [x, y] = [String(a).toLowerCase(), String(b).toLowerCase()];
  return x === y ? 0 : x < y ? -1 : 1;
};

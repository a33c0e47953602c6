import { dayOf } from '../../../src/domain/kernel/day.ts';
import { functions } from '../../../functions/index.ts';
import type { NewWorkbook } from '../../../src/hosts/xlsx/write/new-workbook.ts';
import type { Cell, TableData } from '../../../src/workbook/port.ts';

/**
 * Works a stored formula's text out anew: a small reader of its own, sharing nothing with the code
 * that wrote the text, so that text and shown value are held against each other.
 */
export type Value = Cell | readonly (readonly Cell[])[] | CellError;

export class CellError {
  readonly code: string;
  constructor(code: string) {
    this.code = code;
  }
}

export interface Sheets {
  cell(sheet: string, row: number, column: number): Cell;
  table(name: string): readonly (readonly Cell[])[];
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
          if (typeof value !== 'object') values.set(key(name, row + down, right), value);
        });
      });
    }
    for (const { row, column, value, spill = [[value]] } of cells) {
      spill.forEach((line, down) => {
        line.forEach((each, right) => values.set(key(name, row + down, column + right), each));
      });
    }
  }
  return {
    cell: (sheet, row, column) => values.get(key(sheet, row, column)) ?? '',
    table: (name) => {
      const found = tables.find((table) => table.name === name);
      if (found === undefined) throw new Error(`no table ${name}`);
      return [found.headers, ...found.rows];
    },
    book: handle,
  };
}

const TOKEN =
  /\s*("(?:[^"]|"")*"|'[^']+'!|[A-Za-z]+\[\[#Headers\],\[#Data\]\]|[A-Za-z]+\[[A-Za-z ]+\]|POUR\.[A-Z]+(?=\()|[A-Z]+(?=\()|\$?[A-Z]{1,2}\$?\d+|Book|\d+(?:\.\d+)?|<>|<=|>=|[-+*/&=<>(),:])/y;

/** The value of a formula on a sheet. */
export function readFormula(formula: string, sheet: string, sheets: Sheets): Value {
  const tokens: string[] = [];
  TOKEN.lastIndex = 1;
  while (TOKEN.lastIndex < formula.length) {
    const at = TOKEN.lastIndex;
    const match = TOKEN.exec(formula);
    if (match?.[1] === undefined) throw new Error(`unread: ${formula.slice(at)}`);
    tokens.push(match[1]);
  }
  const reader = new Reader(tokens, sheet, sheets);
  return reader.whole();
}

class Reader {
  private at = 0;
  private readonly tokens: readonly string[];
  private readonly sheet: string;
  private readonly sheets: Sheets;

  constructor(tokens: readonly string[], sheet: string, sheets: Sheets) {
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
    return rows.map((row) => [row[headers.indexOf(header)] ?? '']);
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
    return name.startsWith('POUR.') ? ask(name.slice(5), given) : native(name, given);
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

function ask(id: string, given: readonly Value[]): Value {
  const error = given.find((each) => each instanceof CellError);
  if (error !== undefined) return error;
  try {
    return functions[id]?.(...given) as Value;
  } catch (thrown) {
    return new CellError((thrown as { code?: string }).code ?? String(thrown));
  }
}

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
      : textual(String(first), Number(second), Number(third));
  }
  if (name === 'DATE') {
    const error = given.find((each) => each instanceof CellError);
    return error ?? dayOf(Number(first), Number(second), Number(third));
  }
  const rows = Array.isArray(first) ? (first as readonly (readonly Cell[])[]) : [];
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
    return rows[Number(second) - 1]?.[column - 1] ?? new CellError('#REF!');
  }
  if (name === 'MATCH') {
    const wanted = String(first).toLowerCase();
    const found = (second as readonly (readonly Cell[])[])
      .flat()
      .findIndex((cell) => String(cell).toLowerCase() === wanted);
    return found < 0 ? new CellError('#N/A') : found + 1;
  }
  const count = NUMERIC[name];
  if (count === undefined) throw new Error(`the reader does not know ${name}`);
  return count(
    given.flatMap((each) =>
      (Array.isArray(each) ? (each as readonly (readonly Cell[])[]).flat() : [each]).filter(
        (cell) => typeof cell === 'number',
      ),
    ),
  );
}

function combine(left: Value, sign: string, right: Value): Value {
  if (left instanceof CellError) return left;
  if (right instanceof CellError) return right;
  if (sign === '&') return `${String(left)}${String(right)}`;
  const [a, b] =
    typeof left === 'number' && typeof right === 'number' ? [left, right] : [undefined, undefined];
  if ('+-*/'.includes(sign)) {
    if (a === undefined || b === undefined) return new CellError('#VALUE!');
    if (sign === '/') return b === 0 ? new CellError('#DIV/0!') : a / b;
    return sign === '+' ? a + b : sign === '-' ? a - b : a * b;
  }
  const order = a === undefined || b === undefined ? compareTexts(left, right) : Math.sign(a - b);
  const holds = { '=': order === 0, '<>': order !== 0, '<': order < 0, '>': order > 0 }[sign];
  return holds ?? (sign === '<=' ? order <= 0 : order >= 0);
}

const compareTexts = (a: Value, b: Value): number => {
  const [x, y] = [String(a).toLowerCase(), String(b).toLowerCase()];
  return x === y ? 0 : x < y ? -1 : 1;
};

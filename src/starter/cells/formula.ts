import type { Cell } from '../../workbook/port.ts';
import { isError } from './cell-errors.ts';
import { cellAt, type CellRange, rangeAt } from './cell-names.ts';
import type { TableColumn } from './table-cells.ts';

/** A cell's formula as a person types it, and how its answer is worked out when the file is made. */
export interface Formula {
  /** Without "=". */
  readonly text: string;
  readonly work: (from: Workings) => Answer;
}

/** One value, or rows that spill. */
export type Answer = Cell | readonly (readonly Cell[])[];

/** Cells to look through or add up: a table's column, or a block. */
export interface Cells {
  readonly text: string;
  readonly work: (from: Workings) => Answer | readonly Cell[];
}

/** What a formula may look at while the workbook is put together. */
export interface Workings {
  /** A cell of the formula's own sheet. */
  cell(row: number, column: number): Cell;
  /** A cell of any sheet, worked out when it is looked at. */
  cellOf(sheet: string, row: number, column: number): Cell;
  /** All that a cell of any sheet answers, spilled rows with it. */
  answerOf(sheet: string, row: number, column: number): Answer;
  /** A table's rows, headers first. */
  table(name: string): readonly (readonly Cell[])[];
  /** The cell that a defined name stands for. */
  named(name: string): Cell;
  /** Asks a worksheet function; an error comes back as its text, such as "#N/A". */
  ask(id: string, given: readonly unknown[]): Answer;
}

export const at = (row: number, column: number): Formula => ({
  text: cellAt(row, column),
  work: (from) => from.cell(row, column),
});

/** The same, staying put when the formula is copied. */
export const fixedAt = (row: number, column: number): Formula => ({
  ...at(row, column),
  text: cellAt(row, column, '$'),
});

export const named = (name: string): Formula => ({ text: name, work: (from) => from.named(name) });

/** A table with its headers, without the total row that a maker may put below it. */
export const allOf = (table: string): Formula => ({
  text: `${table}[[#Headers],[#Data]]`,
  work: (from) => from.table(table),
});

/** A block of cells of the same sheet. */
export const block = (
  startRow: number,
  startColumn: number,
  endRow: number,
  endColumn: number,
): Formula => cellsIn({ startRow, startColumn, endRow, endColumn });

/** The same by its range; with "$", staying put when the formula is copied. */
export const cellsIn = (range: CellRange, fixed: '$' | '' = ''): Formula => ({
  text: rangeAt(range, fixed),
  work: (from) => cellsOf(from, range),
});

/** A block of cells of another sheet, staying put when the formula is copied. */
export const blockOf = (sheet: string, range: CellRange): Formula => ({
  text: `'${sheet}'!${rangeAt(range, '$')}`,
  work: (from) =>
    cellsOf({ ...from, cell: (row, column) => from.cellOf(sheet, row, column) }, range),
});

/** One cell of another sheet. */
export const cellOn = (sheet: string, row: number, column: number): Formula => ({
  text: `'${sheet}'!${cellAt(row, column, '$')}`,
  work: (from) => from.cellOf(sheet, row, column),
});

/** One of our own worksheet functions. */
export const pour = (id: string, ...given: readonly Formula[]): Formula => ({
  text: `POUR.${id}(${given.map(({ text }) => text).join(',')})`,
  work: (from) =>
    from.ask(
      id,
      given.map((argument) => argument.work(from)),
    ),
});

/** `otherwise`, but a plain text where `looked` is blank; an error of `looked` stays one. */
export const unlessBlank = (looked: Formula, instead: string, otherwise: Formula): Formula => ({
  text: `IF(${looked.text}="","${instead}",${otherwise.text})`,
  work: (from) => {
    const found = looked.work(from);
    if (found === '') return instead;
    return isError(found) ? found : otherwise.work(from);
  },
});

/** `then`, unless what it rests on failed: then that error, where a count or a sentence would hide it. */
export const unlessFailed = (on: Formula, then: Formula): Formula => ({
  text: `IF(ISERROR(${on.text}),${on.text},${then.text})`,
  work: (from) => {
    const found = on.work(from);
    return isError(found) ? found : then.work(from);
  },
});

/** Blank, or the first error of these cells: LEFT of no letters keeps nothing but an error. */
export const blankOrError = (...cells: readonly Formula[]): Formula => ({
  text: `LEFT(${cells.map(({ text }) => text).join('&')},0)`,
  work: (from) => cells.map((cell) => cell.work(from)).find(isError) ?? '',
});

/** The cell of a table's column in its row number `row` (1 is the first); blank past the end or where it is blank. */
export const rowOf = (column: TableColumn, row: number): Formula => {
  const cell = `INDEX(${column.text},${String(row)})`;
  return {
    text: `IF(${cell}="","",${cell})`,
    work: (from) => column.work(from)[row - 1] ?? '',
  };
};

/** 1 where a cell says yes, else 0. */
export const saysYes = (asked: Formula): Formula => ({
  text: `IF(${asked.text}="yes",1,0)`,
  work: (from) => (asked.work(from) === 'yes' ? 1 : 0),
});

/** `a - b`; blank where either is no number and none is an error. */
export const less = (a: Formula, b: Formula): Formula => ({
  text: `IF(COUNT(${a.text},${b.text})=2,${a.text}-${b.text},${blankOrError(a, b).text})`,
  work: (from) => {
    const [x, y] = [a.work(from), b.work(from)];
    if (typeof x === 'number' && typeof y === 'number') return x - y;
    return blankOrError(a, b).work(from);
  },
});

/** What share of `whole` is left after `part`, 0 to 1; blank where it can't be said and nothing failed. */
export const shareLeft = (whole: Formula, part: Formula): Formula => ({
  text: `IF(COUNT(${whole.text},${part.text})=2,IF(${whole.text}=0,"",(${whole.text}-${part.text})/${whole.text}),${blankOrError(whole, part).text})`,
  work: (from) => {
    const [x, y] = [whole.work(from), part.work(from)];
    if (typeof x === 'number' && typeof y === 'number') return x === 0 ? '' : (x - y) / x;
    return blankOrError(whole, part).work(from);
  },
});

/** The numbers of a block added up. */
export const sumOf = (cells: Cells): Formula => ({
  text: `SUM(${cells.text})`,
  work: (from) => {
    const found = cells.work(from);
    return errorIn(found) ?? numbersOf(found).reduce((a, b) => a + b, 0);
  },
});

/** How many numbers of a block are above 0. */
export const countAboveZero = (cells: Cells): Formula => ({
  text: `COUNTIF(${cells.text},">0")`,
  work: (from) => numbersOf(cells.work(from)).filter((value) => value > 0).length,
});

/**
 * The next name of a table's column that does not stand above yet, for a list of different names
 * that begins below `head`. Blank after the last one.
 */
export const nextDifferent = (
  source: TableColumn,
  head: { readonly row: number; readonly column: number },
  row: number,
): Formula => {
  const above = `${cellAt(head.row, head.column, '$')}:${cellAt(row - 1, head.column)}`;
  return {
    text: `IFERROR(INDEX(${source.text},MATCH(0,INDEX(COUNTIF(${above},${source.text})+(${source.text}=""),0),0))&"","")`,
    work: (from) =>
      [...new Set(source.work(from).filter((name) => name !== ''))][row - head.row - 1] ?? '',
  };
};

function cellsOf(from: Pick<Workings, 'cell'>, range: CellRange): Cell[][] {
  const rows: Cell[][] = [];
  for (let row = range.startRow; row <= range.endRow; row += 1) {
    const cells: Cell[] = [];
    for (let column = range.startColumn; column <= range.endColumn; column += 1)
      cells.push(from.cell(row, column));
    rows.push(cells);
  }
  return rows;
}

type Found = Answer | readonly Cell[];

const listOf = (found: Found): readonly Cell[] =>
  typeof found === 'object' ? (found as readonly (Cell | readonly Cell[])[]).flat() : [found];

const numbersOf = (found: Found): number[] =>
  listOf(found).filter((cell) => typeof cell === 'number');

const errorIn = (found: Found): Cell | undefined => listOf(found).find(isError);

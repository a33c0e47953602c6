import { functions } from '../../../functions/index.ts';
import { asIfOn } from '../../../functions/clock.ts';
import { CellFailure } from '../../../functions/failure.ts';
import type { Cell } from '../../workbook/port.ts';
import type { Answer, Workings } from '../cells/formula.ts';
import { bookName } from '../cells/names.ts';
import { holdsFormula, type StarterCell } from '../cells/sheet.ts';
import { bookPlace } from '../sheets/start-sheet.ts';
import type { StarterWorkbook } from '../starter-workbook.ts';

/** The answer of every formula, by `placeKey`. */
export type WorkedOut = ReadonlyMap<string, Answer>;

export const placeKey = (sheet: string, row: number, column: number): string =>
  `${sheet} ${String(row)} ${String(column)}`;

/**
 * Works out every formula with the worksheet functions themselves, each when it is first looked at, so
 * that the file shows its numbers where the add-in is missing. Today is the workbook's own day.
 */
export function workOut(starter: StarterWorkbook): WorkedOut {
  const working = new Working(starter);
  asIfOn(starter.day, () => {
    for (const { name, cells } of starter.sheets) {
      for (const { row, column, holds } of cells)
        if (holdsFormula(holds)) working.answerOf(name, row, column);
    }
  });
  return working.answers;
}

class Working {
  readonly answers = new Map<string, Answer>();
  private readonly cells = new Map<string, StarterCell>();
  private readonly spilling = new Map<string, readonly StarterCell[]>();
  private readonly tables: ReadonlyMap<string, readonly (readonly Cell[])[]>;
  private readonly inWork = new Set<string>();

  constructor({ sheets, tables }: StarterWorkbook) {
    this.tables = new Map(tables.map(({ name, headers, rows }) => [name, [headers, ...rows]]));
    for (const { name, cells } of sheets) {
      for (const cell of cells) this.cells.set(placeKey(name, cell.row, cell.column), cell);
      this.spilling.set(
        name,
        cells.filter(({ spills }) => spills !== undefined),
      );
    }
  }

  answerOf(sheet: string, row: number, column: number): Answer {
    const key = placeKey(sheet, row, column);
    const holds = this.cells.get(key)?.holds ?? '';
    if (!holdsFormula(holds)) return holds;
    const known = this.answers.get(key);
    if (known !== undefined) return known;
    if (this.inWork.has(key)) throw new Error(`${key} asks for itself`);
    this.inWork.add(key);
    const answer = holds.work(this.from(sheet));
    this.inWork.delete(key);
    if (typeof answer === 'object') this.checkRoom(key, answer);
    this.answers.set(key, answer);
    return answer;
  }

  private from(sheet: string): Workings {
    return {
      cell: (row, column) => this.valueAt(sheet, row, column),
      cellOf: (other, row, column) => this.valueAt(other, row, column),
      answerOf: (other, row, column) => this.answerOf(other, row, column),
      table: (name) => known(this.tables.get(name), `table ${name}`),
      named: (name) => known(name === bookName ? this.book() : undefined, `name ${name}`),
      ask,
    };
  }

  private book(): Cell {
    return this.valueAt(bookPlace.sheet, bookPlace.row, bookPlace.column);
  }

  private valueAt(sheet: string, row: number, column: number): Cell {
    if (this.cells.has(placeKey(sheet, row, column)))
      return answerRows(this.answerOf(sheet, row, column))[0]?.[0] ?? '';
    const over = this.spilling
      .get(sheet)
      ?.find(
        (cell) =>
          cell.row < row && cell.column <= column && column < cell.column + (cell.spills ?? 1),
      );
    if (over === undefined) return '';
    const rows = answerRows(this.answerOf(sheet, over.row, over.column));
    return rows[row - over.row]?.[column - over.column] ?? '';
  }

  private checkRoom(key: string, rows: readonly (readonly Cell[])[]): void {
    const room = this.cells.get(key)?.spills ?? 0;
    if (rows.some((row) => row.length > room))
      throw new Error(`${key} answers more columns than the ${String(room)} it has room for`);
  }
}

/** An answer as rows; one value is one row of one cell. */
export const answerRows = (answer: Answer): readonly (readonly Cell[])[] =>
  typeof answer === 'object' ? answer : [[answer]];

function ask(id: string, given: readonly unknown[]): Answer {
  try {
    return known(functions[id], `function ${id}`)(...given) as Answer;
  } catch (thrown) {
    if (thrown instanceof CellFailure) return thrown.code;
    throw thrown;
  }
}

function known<T>(found: T | undefined, what: string): T {
  if (found === undefined) throw new Error(`The starter workbook has no ${what}`);
  return found;
}

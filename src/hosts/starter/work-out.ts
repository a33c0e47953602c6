import { functions } from '../../../functions/index.ts';
import { asIfOn } from '../../../functions/clock.ts';
import { CellFailure } from '../../../functions/failure.ts';
import type { Cell } from '../../workbook/port.ts';
import type { Answer, Workings } from '../../workbook/starter/formula.ts';
import { bookName } from '../../workbook/starter/names.ts';
import { isFormula } from '../../workbook/starter/sheet.ts';
import { bookPlace } from '../../workbook/starter/start-sheet.ts';
import type { StarterWorkbook } from '../../workbook/starter/starter-workbook.ts';

/** The answer of every formula, by `placeKey`. */
export type Answers = ReadonlyMap<string, Answer>;

export const placeKey = (sheet: string, row: number, column: number): string =>
  `${sheet} ${String(row)} ${String(column)}`;

/**
 * Works out every formula with the worksheet functions themselves, sheet by sheet, so that the file
 * shows its numbers where the add-in is missing. Today is the workbook's own day.
 */
export function workOut({ day, sheets, tables }: StarterWorkbook): Answers {
  const answers = new Map<string, Answer>();
  const values = new Map<string, Cell>();
  const tableRows = new Map(tables.map(({ name, headers, rows }) => [name, [headers, ...rows]]));
  const from = (sheet: string): Workings => ({
    today: day,
    cell: (row, column) => values.get(placeKey(sheet, row, column)) ?? '',
    cellOf: (other, row, column) => values.get(placeKey(other, row, column)) ?? '',
    table: (name) => known(tableRows.get(name), `table ${name}`),
    named: (name) => known(name === bookName ? bookValue() : undefined, `name ${name}`),
    ask,
  });
  const bookValue = () => values.get(placeKey(bookPlace.sheet, bookPlace.row, bookPlace.column));
  asIfOn(day, () => {
    for (const { name, cells } of sheets) {
      for (const { row, column, holds } of cells) {
        const answer = isFormula(holds) ? holds.work(from(name)) : holds;
        if (isFormula(holds)) answers.set(placeKey(name, row, column), answer);
        rowsOf(answer).forEach((line, down) => {
          line.forEach((value, right) => {
            values.set(placeKey(name, row + down, column + right), value);
          });
        });
      }
    }
  });
  return answers;
}

/** An answer as rows; one value is one row of one cell. */
export const rowsOf = (answer: Answer): readonly (readonly Cell[])[] =>
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

import { isError } from '../cells/cell-errors.ts';
import type { CellRange } from '../cells/cell-names.ts';
import { blockOf, cellOn, type Formula, unlessBlank } from '../cells/formula.ts';
import { blank, flat, textsIn, value } from '../cells/native.ts';
import { functionAnswersSheet } from '../cells/names.ts';
import type { StarterCell, StarterSheet } from '../cells/sheet.ts';

/** Designs that the forecast has columns for, and fairs whose results are shown. */
export const FORECAST_DESIGNS = 10;
export const FAIRS_SHOWN = 12;

/** What each list is for, and the columns that its function answers. */
const named = {
  melts: ['What to weigh: what to melt', 11],
  needs: ['What to weigh: taken from the shelf', 5],
  costLines: ['Costing: where the cost goes', 3],
  batchCost: ['Batch check', 8],
  stock: ['Reorder', 8],
  serviceCheck: ['Reorder check', 3],
  planNotes: ['Season: to see to', 2],
  supplies: ['Season: what to buy', 7],
  calendar: ['Season: days to work', 5],
  cashByWeek: ['Shopping: money by week', 4],
  otherCostLines: ['What if: cost of a bar', 3],
  otherSupplies: ['What if: what to buy', 7],
  otherCalendar: ['What if: days to work', 5],
  checks: ['Label: checks', 5],
  batch: ['Label: the batch', 8],
  recall: ['Recall: where it is', 8],
  trail: ['Recall: what carried it', 7],
  tiles: ['Mosaic', 2],
} as const satisfies Readonly<Record<string, readonly [title: string, columns: number]>>;

export type ListName =
  keyof typeof named | `fair ${number}` | `forecast ${number}` | `method ${number}`;

const numbered = (name: string, title: string, count: number, columns: number) =>
  Array.from({ length: count }, (_, index) => {
    const number = String(index + 1);
    return [`${name} ${number}`, [`${title} ${number}`, columns]] as const;
  });

const lists = new Map<string, readonly [title: string, columns: number]>([
  ...Object.entries(named),
  ...numbered('fair', 'Fair results: line', FAIRS_SHOWN, 2),
  ...numbered('forecast', 'Forecast: design', FORECAST_DESIGNS, 1),
  ...numbered('method', 'Forecast: method of design', FORECAST_DESIGNS, 4),
]);

const TITLES = 2;
const HEADS = 3;
/** Lines that sums and look-ups reach; the sheet has room for all that a function answers. */
const MOST_LINES = 5000;

/** A list that one hidden cell asks for: whoever shows a part of it looks there. */
export interface AnsweredList {
  readonly name: ListName;
  /** The hidden cell that asks: the first header, or the error of a question that failed. */
  readonly head: Formula;
  /** One cell as it stands there; lines and columns count from 1, the headers being line 0. */
  at(line: number, column: number): Formula;
  /** A column of all lines. */
  column(column: number): Formula;
  /** How many lines there are beyond so many, by the names in a column. */
  beyond(lines: number, column?: number): Formula;
}

export function answered(name: ListName): AnsweredList {
  const left = leftOf(name);
  const head = cellOn(functionAnswersSheet, HEADS, left);
  const column = (number: number, from: number): Formula => {
    const range: CellRange = {
      startRow: HEADS + from,
      startColumn: left + number - 1,
      endRow: HEADS + MOST_LINES,
      endColumn: left + number - 1,
    };
    return {
      text: blockOf(functionAnswersSheet, range).text,
      work: (given) => {
        const answer = given.answerOf(functionAnswersSheet, HEADS, left);
        return typeof answer === 'object'
          ? answer.slice(from).map((row) => [flat([row])[number - 1] ?? ''])
          : [];
      },
    };
  };
  return {
    name,
    head,
    at: (line, number) => cellOn(functionAnswersSheet, HEADS + line, left + number - 1),
    column: (number) => column(number, 1),
    beyond: (lines, number = 1) =>
      unlessFailedElse(head, textsIn(column(number, lines + 1)), value(0)),
  };
}

/**
 * What a sheet shows of one cell: blank past the end, and where the question failed. Each cell looks at
 * the head as well: the workbench's engine knows by that alone that the list must be there first.
 */
export const shown = (
  list: AnsweredList,
  line: number,
  column: number,
  as: (cell: Formula) => Formula = orBlank,
): Formula => unlessFailedElse(list.head, as(list.at(line, column)), blank);

/**
 * The same for the first cell of a list, which shows the error of a question that failed, or what stands
 * there while nothing is asked. Only for a column that is never blank: LibreOffice works cells that were
 * blank out anew as it opens a file, and would show that error where nothing stood.
 */
export const shownFirst = (list: AnsweredList, column: number, instead: string): Formula =>
  unlessBlank(list.head, instead, orBlank(list.at(1, column)));

const unlessFailedElse = (head: Formula, then: Formula, otherwise: Formula): Formula => ({
  text: `IF(ISERROR(${head.text}),${otherwise.text},${then.text})`,
  work: (from) => (isError(head.work(from)) ? otherwise : then).work(from),
});

/** A reference to an empty cell would show 0, and may hand a function 0. */
export const orBlank = (cell: Formula): Formula => unlessBlank(cell, '', cell);

/** One question to ask in the hidden sheet. */
export interface Ask {
  readonly list: AnsweredList;
  readonly of: Formula;
}

/**
 * The hidden sheet that asks for every list once, side by side, each with all rows below it for itself.
 * LibreOffice works spilled cells out anew as it opens a file, and knows no function of ours; the cells
 * of other sheets that look here keep their last values.
 */
export function answersSheet(asks: readonly Ask[]): StarterSheet {
  return {
    name: functionAnswersSheet,
    group: 'behind',
    widths: {},
    cells: [
      {
        row: 0,
        column: 0,
        holds: 'Each list is asked for once here; other sheets show it. Nothing to type.',
        look: { role: 'note' },
      },
      ...asks.flatMap(({ list, of }): StarterCell[] => {
        const [title, columns] = placed(list.name);
        const column = leftOf(list.name);
        return [
          { row: TITLES, column, holds: title, look: { role: 'label' } },
          { row: HEADS, column, holds: of, spills: columns, look: { role: 'plain' } },
        ];
      }),
    ],
    landscape: true,
  };
}

/** The column a list begins in, with one left free between two. */
function leftOf(name: ListName): number {
  let left = 0;
  for (const [other, [, columns]] of lists) {
    if (other === name) return left;
    left += columns + 1;
  }
  throw new Error(`No place for the list ${name}`);
}

function placed(name: ListName): readonly [title: string, columns: number] {
  const found = lists.get(name);
  if (found === undefined) throw new Error(`No place for the list ${name}`);
  return found;
}

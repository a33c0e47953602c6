import { tables } from '../../workbook/schema.ts';
import { cell } from '../cells/answer-cells.ts';
import {
  allOf,
  blockOf,
  cellOn,
  cellsIn,
  type Formula,
  named,
  pour,
  rowOf,
} from '../cells/formula.ts';
import { unlessCut } from './listed.ts';
import { blank, choose, flat, textsIn } from '../cells/native.ts';
import { bookName, otherBookPlace, whatIfName } from '../cells/names.ts';
import type { StarterCell } from '../cells/sheet.ts';
import { columnCells } from '../cells/table-cells.ts';

/** Where the plan with more bars stands: beyond what prints. */
const TOP = otherBookPlace.row + 2;
const LEFT = otherBookPlace.column;
const LINES = 60;
const kinds = Object.keys(tables) as (keyof typeof tables)[];

/** The other book, and the plan it reads: every line with so many bars more. Nothing else differs. */
export function otherPlan(moreBars: Formula): StarterCell[] {
  const { columns } = tables.plan;
  const headers = Object.values(columns).map(({ header }, right) =>
    cell(TOP, LEFT + right, header, 'plain', 'unseen'),
  );
  const rows = Array.from({ length: LINES }, (_, index) =>
    (Object.keys(columns) as (keyof typeof columns)[]).map((key, right) => {
      const asPlanned = rowOf(columnCells('plan', key), index + 1);
      const holds = key === 'bars' ? more(asPlanned, moreBars) : asPlanned;
      return cell(TOP + 1 + index, LEFT + right, holds, 'plain', 'unseen');
    }),
  );
  const plan = cellsIn(
    { startRow: TOP, startColumn: LEFT, endRow: TOP + LINES, endColumn: LEFT + headers.length - 1 },
    '$',
  );
  const read = pour(
    'BOOK',
    ...kinds.map((kind) => (kind === 'plan' ? plan : allOf(tables[kind].name))),
  );
  return [
    ...headers,
    ...rows.flat(),
    // After Book, so that the add-in's reading of Book anew on opening reads this one anew too.
    cell(
      otherBookPlace.row,
      otherBookPlace.column,
      choose([named(bookName), '=', blank], named(bookName), unlessCut(otherBeyond, read)),
      'plain',
      'unseen',
    ),
  ];
}

/** The other book's cell, for other sheets. */
export const otherBook: Formula = cellOn(whatIfName, otherBookPlace.row, otherBookPlace.column);

/** Plan lines that it has no room for. */
export const otherBeyond: Formula = textsIn(columnCells('plan', 'design', LINES + 1));

/** As planned where there is no number to add. */
const more = (bars: Formula, moreBars: Formula): Formula => ({
  text: `IF(COUNT(${bars.text},${moreBars.text})=2,${bars.text}+${moreBars.text},${bars.text})`,
  work: (from) => {
    const [planned, added] = [flat(bars.work(from))[0] ?? '', moreBars.work(from)];
    return typeof planned === 'number' && typeof added === 'number' ? planned + added : planned;
  },
});

/** The bars of its plan. */
export const otherBars: Formula = blockOf(whatIfName, {
  startRow: TOP + 1,
  startColumn: LEFT + Object.keys(tables.plan.columns).indexOf('bars'),
  endRow: TOP + LINES,
  endColumn: LEFT + Object.keys(tables.plan.columns).indexOf('bars'),
});

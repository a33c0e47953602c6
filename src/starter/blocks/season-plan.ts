import { cell, headerCells } from '../cells/answer-cells.ts';
import {
  at,
  cellsIn,
  type Formula,
  named,
  pour,
  rowOf,
  sumOf,
  unlessBlank,
} from '../cells/formula.ts';
import { moreNote } from './listed.ts';
import { sumWhere } from '../cells/look-up.ts';
import {
  blank,
  choose,
  given,
  largestOf,
  minus,
  plusCell,
  textsIn,
  value,
} from '../cells/native.ts';
import { bookName } from '../cells/names.ts';
import { SEASON, type SeasonAsked, seasonColumn } from './season-places.ts';
import type { StarterCell } from '../cells/sheet.ts';
import { columnCells, wholeColumn } from '../cells/table-cells.ts';

const { first, lines } = SEASON.plan;
const DESIGN = 0;
const READY = 1;
const BARS = 2;
const STOCK = 3;
const EARLIER = 4;

/** The lines of the plan, each with the bars on hand that earlier lines leave it, and those to make. */
export function planCells(asked: SeasonAsked): StarterCell[] {
  return [
    cell(first - 2, 0, 'Bars to make', 'heading'),
    cell(first - 2, 2, moreNote(planBeyond, 'see Season plan.'), 'note'),
    ...headerCells(first - 1, 0, [
      ['Design', 'text'],
      ['Ready by', 'date'],
      ['Bars', 'whole'],
      ['On hand', 'whole'],
      ['Earlier lines', 'whole'],
      ['To make', 'whole'],
      ['Plan line', 'text'],
      ['Fair', 'text'],
    ]),
    ...Array.from({ length: lines }, (_, index) => planRow(index, asked)).flat(),
  ];
}

function planRow(index: number, { from, today }: SeasonAsked): StarterCell[] {
  const row = first + index;
  const [design, ready, bars] = [at(row, DESIGN), at(row, READY), at(row, BARS)];
  const [stock, earlier] = [at(row, STOCK), at(row, EARLIER)];
  const left = largestOf(value(0), minus(stock, earlier));
  const toMake = largestOf(value(0), minus(bars, left));
  const open = (then: Formula): Formula =>
    given([ready, bars], choose([ready, '>=', today], then, value(0)));
  return [
    cell(row, DESIGN, rowOf(columnCells('plan', 'design'), index + 1), 'plain', 'text'),
    cell(row, READY, rowOf(columnCells('plan', 'readyBy'), index + 1), 'plain', 'date'),
    cell(row, BARS, rowOf(columnCells('plan', 'bars'), index + 1), 'plain', 'whole'),
    cell(
      row,
      STOCK,
      unlessBlank(design, '', pour('ONHAND', design, named(bookName), from)),
      'plain',
      'whole',
    ),
    cell(row, EARLIER, open(earlierBars(row, today)), 'plain', 'whole'),
    cell(row, EARLIER + 1, given([stock, earlier], open(toMake)), 'strong', 'whole'),
    cell(row, EARLIER + 2, rowOf(columnCells('plan', 'planLine'), index + 1), 'plain', 'text'),
    cell(row, EARLIER + 3, rowOf(columnCells('plan', 'fair'), index + 1), 'plain', 'text'),
  ];
}

/** Bars of the same design that are to be ready sooner, or that day but further up. */
function earlierBars(row: number, today: Formula): Formula {
  const column = (at: number) => cellsIn(seasonColumn('plan', at), '$');
  const sooner = sumWhere(
    column(BARS),
    [column(DESIGN), '', at(row, DESIGN)],
    [column(READY), '<', at(row, READY)],
    [column(READY), '>=', today],
  );
  if (row === first) return sooner;
  const above = (at: number) =>
    cellsIn({ startRow: first, startColumn: at, endRow: row - 1, endColumn: at });
  const sameDay = sumWhere(
    above(BARS),
    [above(DESIGN), '', at(row, DESIGN)],
    [above(READY), '', at(row, READY)],
  );
  return plusCell(sooner, sameDay);
}

/** All bars of the table, however many of its lines are shown. */
export const barsPlanned: Formula = sumOf(wholeColumn('plan', 'bars'));

/** Nothing is asked while nothing is planned. */
export const unlessUnplanned = (question: Formula): Formula =>
  choose([barsPlanned, '=', value(0)], blank, question);

/** Plan lines that find no room in the lines shown. */
export const planBeyond: Formula = textsIn(columnCells('plan', 'design', lines + 1));

import { cell, headerCells } from './answer-cells.ts';
import { dateOfIso } from './dates.ts';
import { at, cellsIn, type Formula, named, pour } from './formula.ts';
import { countWhere } from './look-up.ts';
import { blank, choose, given, join, pick, unlessError, value } from './native.ts';
import { bookName } from './names.ts';
import { SEASON, type SeasonAsked } from './season-places.ts';
import { firstOrUnplanned } from './season-plan.ts';
import type { StarterCell } from './sheet.ts';

const { first, lines } = SEASON.work;

/** What POUR.CALENDAR lists, its columns from 1. */
const from = { date: 1, task: 2, design: 3, bars: 4, minutes: 5 };
const TASK = 4;
/** What the month view looks up: the day with a number for each of its tasks, and the task in words. */
export const WORK_KEY = SEASON.unseen + 1;
export const WORK_WORDS = SEASON.unseen + 2;

/** The days to pour, worked back from each Ready by; what does not fit stands first, without a day. */
export function workCells(asked: SeasonAsked): StarterCell[] {
  return [
    cell(first - 2, 0, 'Days to work', 'heading'),
    ...headerCells(first - 1, 0, [
      ['Design', 'text'],
      ['Date', 'date'],
      ['Bars', 'whole'],
      ['Minutes', 'whole'],
      ['Task', 'text'],
      ['', 'text'],
      ['', 'text'],
      ['', 'text'],
    ]),
    ...Array.from({ length: lines }, (_, index) => workRow(index, asked)).flat(),
  ];
}

function workRow(index: number, asked: SeasonAsked): StarterCell[] {
  const row = first + index;
  const list = pour('CALENDAR', named(bookName), asked.from);
  const line = (column: number): Formula => pick(list, index + 2, column);
  const [design, date, iso] = [at(row, 0), at(row, 1), at(row, SEASON.unseen)];
  const rest = (column: number): Formula =>
    choose([design, '=', blank], blank, unlessError(line(column), blank));
  const name =
    index === 0 ? firstOrUnplanned(line(from.design)) : unlessError(line(from.design), blank);
  const days = cellsIn({ startRow: first, startColumn: 1, endRow: row, endColumn: 1 });
  const key = join(date, value('-'), countWhere([days, '', date]));
  const words = join(at(row, TASK), value(' '), at(row, 2), value(' '), design);
  return [
    cell(row, 0, name, 'plain', 'text'),
    cell(row, SEASON.unseen, rest(from.date), 'plain', 'unseen'),
    cell(row, 1, dateOfIso(iso), 'plain', 'date'),
    cell(row, 2, rest(from.bars), 'plain', 'whole'),
    cell(row, 3, rest(from.minutes), 'plain', 'whole'),
    cell(row, TASK, rest(from.task), 'plain', 'text'),
    cell(row, WORK_KEY, given([date], key), 'plain', 'unseen'),
    cell(row, WORK_WORDS, given([date], words), 'plain', 'unseen'),
  ];
}

import { cell, headerCells } from '../cells/answer-cells.ts';
import { answered, type Ask, shown, shownFirst } from './answered.ts';
import { dateOfIso } from '../cells/dates.ts';
import { at, cellsIn, named, pour, sumOf, unlessFailed } from '../cells/formula.ts';
import { moreNote } from './listed.ts';
import { countWhere } from '../cells/look-up.ts';
import { given, join, value } from '../cells/native.ts';
import { bookName } from '../cells/names.ts';
import { onSeason, SEASON, UNPLANNED } from './season-places.ts';
import { unlessUnplanned } from './season-plan.ts';
import type { StarterCell } from '../cells/sheet.ts';

const { first, lines } = SEASON.work;

/** What POUR.CALENDAR lists, its columns from 1. */
export const calendarColumns = { date: 1, task: 2, design: 3, bars: 4, minutes: 5 } as const;
const from = calendarColumns;
const calendar = answered('calendar');
const TASK = 4;
/** What the month view looks up: the day with a number for each of its tasks, and the task in words. */
export const WORK_KEY = SEASON.unseen + 1;
export const WORK_WORDS = SEASON.unseen + 2;

export const workAsk: Ask = {
  list: calendar,
  of: unlessUnplanned(pour('CALENDAR', named(bookName), onSeason.from)),
};

/** The minutes of all days, however many are shown. */
export const minutesOfWork = unlessFailed(calendar.head, sumOf(calendar.column(from.minutes)));

/** The days to pour, worked back from each Ready by; what does not fit stands first, without a day. */
export function workCells(): StarterCell[] {
  return [
    cell(first - 2, 0, 'Days to work', 'heading'),
    cell(
      first - 2,
      2,
      moreNote(calendar.beyond(lines, from.task), 'put POUR.CALENDAR on a sheet of its own.'),
      'note',
    ),
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
    ...Array.from({ length: lines }, (_, index) => workRow(index)).flat(),
  ];
}

function workRow(index: number): StarterCell[] {
  const row = first + index;
  const line = (column: number) => shown(calendar, index + 1, column);
  const [design, date] = [at(row, 0), at(row, 1)];
  const name = index === 0 ? shownFirst(calendar, from.design, UNPLANNED) : line(from.design);
  const days = cellsIn({ startRow: first, startColumn: 1, endRow: row, endColumn: 1 });
  const key = join(date, value('-'), countWhere([days, '', date]));
  const words = join(at(row, TASK), value(' '), at(row, 2), value(' '), design);
  return [
    cell(row, 0, name, 'plain', 'text'),
    cell(row, 1, shown(calendar, index + 1, from.date, dateOfIso), 'plain', 'date'),
    cell(row, 2, line(from.bars), 'plain', 'whole'),
    cell(row, 3, line(from.minutes), 'plain', 'whole'),
    cell(row, TASK, line(from.task), 'plain', 'text'),
    cell(row, WORK_KEY, given([date], key), 'plain', 'unseen'),
    cell(row, WORK_WORDS, given([date], words), 'plain', 'unseen'),
  ];
}

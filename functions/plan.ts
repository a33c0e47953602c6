import {
  forecast as forecastOf,
  forecastReport,
  USUAL_SEASON,
} from '../src/domain/forecast/forecast.ts';
import { readHistory } from '../src/domain/forecast/history.ts';
import { isoDate } from '../src/domain/kernel/day.ts';
import { toCell } from '../src/domain/kernel/exact.ts';
import { andThen, type Result } from '../src/domain/kernel/result.ts';
import {
  type CalendarEntry,
  type CalendarNotice,
  calendar as calendarOf,
} from '../src/domain/schedule/calendar.ts';
import { cashByWeek as weeksOf } from '../src/domain/supplies/cash-by-week.ts';
import { planNotes as notesFor } from '../src/domain/now/plan-notes.ts';
import { supplies as suppliesFor } from '../src/domain/supplies/supplies.ts';
import type { Cell } from '../src/workbook/port.ts';
import { amountCell, type CellAnswer, settle } from './answer.ts';
import {
  booleanArgument,
  dayArgument,
  countArgument,
  optionalCount,
  rangeArgument,
} from './arguments.ts';
import { bookArgument } from './books.ts';
import { CellFailure } from './failure.ts';

/**
 * Forecasts the next periods of a history by the method that the history bears out best.
 * @customfunction FORECAST
 * @param {any[][]} history One figure for each period, oldest first; a blank between figures counts as 0.
 * @param {any} periods How many periods to forecast.
 * @param {any} [season] Periods in a season: 12 if blank, 1 for none.
 * @returns {number[][]} One forecast for each period.
 */
export function forecast(history: any[][], periods: any, season?: any): number[][] {
  return forecastArguments(history, periods, season, forecastOf).map((value) => [value]);
}

/**
 * How POUR.FORECAST forecasts a history: the method chosen, its weights, its errors, and how far each period may be off.
 * @customfunction FORECASTFIT
 * @param {any[][]} history As for POUR.FORECAST.
 * @param {any} periods How many periods to forecast.
 * @param {any} [season] Periods in a season: 12 if blank, 1 for none.
 * @returns {any[][]} Line, Value, Low, High: 19 of 20 futures lie between low and high.
 */
export function forecastFit(history: any[][], periods: any, season?: any): any[][] {
  const report = forecastArguments(history, periods, season, forecastReport);
  const figures = [
    ...report.parameters.map(({ name, value }) => [name, value]),
    ['MAE', report.mae],
    ['RMSE', report.rmse],
    ['MASE', report.mase ?? ''],
  ];
  return [
    ['Line', 'Value', 'Low', 'High'],
    ['Method', report.method, '', ''],
    ...figures.map((line) => [...line, '', '']),
    ...report.periods.map(({ value, low, high }, index) => [
      `Period ${index + 1}`,
      value,
      low,
      high,
    ]),
  ];
}

function forecastArguments<T>(
  history: unknown,
  periods: unknown,
  season: unknown,
  ask: (history: readonly number[], periods: number, season: number) => Result<T>,
): T {
  const cells = singleLine(rangeArgument(history, 'history'));
  const count = countArgument(periods, 'periods');
  const length = optionalCount(season, 'season') ?? USUAL_SEASON;
  return settle(andThen(readHistory(cells), (values) => ask(values, count, length)));
}

/** The cells of one column or one row. */
function singleLine(range: readonly Cell[][]): Cell[] {
  const width = Math.max(0, ...range.map((row) => row.length));
  if (range.length > 1 && width > 1) {
    throw new CellFailure('#VALUE!', 'history must be one column or one row of figures.');
  }
  return range.flat();
}

/**
 * What to buy for the plan: what it takes, what is there, packs, and the last day to order.
 * @customfunction SUPPLIES
 * @param {any} book The cell named Book.
 * @param {any} [from] Plan lines ready on this day or later, with its stock; today if blank.
 * @param {any} [useLeftovers] TRUE melts and lays leftovers and spares first, those of earlier lines too; FALSE if blank.
 * @returns {any[][]} Material, Gross, On hand, Net, Packs, Order by, Cost.
 */
export function supplies(book: any, from?: any, useLeftovers?: any): any[][] {
  const { lines } = settle(suppliesFor(...planArguments(book, from, useLeftovers)));
  const rows = lines.map((line) => [
    line.material.name,
    amountCell(line.gross),
    amountCell(line.onHand),
    amountCell(line.net),
    line.packs === undefined ? '' : toCell(line.packs),
    line.orderBy === undefined ? '' : isoDate(line.orderBy),
    line.cost === undefined ? '' : toCell(line.cost),
  ]);
  return [['Material', 'Gross', 'On hand', 'Net', 'Packs', 'Order by', 'Cost'], ...rows];
}

/**
 * The money that the orders for the plan take, week by week; what should be ordered already falls in the first.
 * @customfunction CASHBYWEEK
 * @param {any} book The cell named Book.
 * @param {any} [from] As for POUR.SUPPLIES.
 * @param {any} [useLeftovers] As for POUR.SUPPLIES.
 * @returns {any[][]} Week from Monday, Money, Of it late, In all.
 */
export function cashByWeek(book: any, from?: any, useLeftovers?: any): any[][] {
  const asked = planArguments(book, from, useLeftovers);
  const weeks = weeksOf(settle(suppliesFor(...asked)), asked[1]);
  return [
    ['Week from Monday', 'Money', 'Of it late', 'In all'],
    ...weeks.map(({ monday, cost, late, inAll }) => [
      isoDate(monday),
      ...[cost, late, inAll].map(toCell),
    ]),
  ];
}

/**
 * What the plan leaves to see to: lines that do not fit and what would make them fit, what is missing in the tables, and what is taken for granted.
 * @customfunction PLANNOTES
 * @param {any} book The cell named Book.
 * @param {any} [from] As for POUR.SUPPLIES.
 * @param {any} [useLeftovers] As for POUR.SUPPLIES.
 * @returns {any[][]} About, Note; only the headers where there is nothing to say.
 */
export function planNotes(book: any, from?: any, useLeftovers?: any): any[][] {
  const notes = settle(notesFor(...planArguments(book, from, useLeftovers)));
  return [
    ['About', 'Note'],
    ...notes.map(({ kind, about, sentence }) => [kind === 'assumed' ? 'Assumed' : about, sentence]),
  ];
}

const planArguments = (book: unknown, from: unknown, useLeftovers: unknown) =>
  [
    bookArgument(book),
    dayArgument(from, 'from'),
    { reuse: booleanArgument(useLeftovers, 'use leftovers', false) },
  ] as const;

/**
 * What to do on which day so that the plan is ready in time; what does not fit says so first, without a date.
 * @customfunction CALENDAR
 * @param {any} book The cell named Book.
 * @param {any} [from] The first day there is to work; today if blank.
 * @returns {any[][]} Date, Task, Design, Bars, Minutes.
 */
export function calendar(book: any, from?: any): any[][] {
  const { entries, notices, covered } = settle(
    calendarOf(bookArgument(book), dayArgument(from, 'from')),
  );
  return [
    ['Date', 'Task', 'Design', 'Bars', 'Minutes'],
    ...notices.map(noticeRow),
    ...entries.map(entryRow),
    ...covered.map(noticeRow),
  ];
}

const tasks = { shape: 'Shape tiles', pour: 'Pour', unmold: 'Unmold' } as const;

const entryRow = ({ day, task, line, bars, minutes }: CalendarEntry): CellAnswer[] => [
  isoDate(day),
  tasks[task],
  line.design.name,
  bars,
  minutes,
];

const noticeRow = ({ line, bars, minutes, sentence }: CalendarNotice): CellAnswer[] => [
  '',
  sentence,
  line.design.name,
  bars,
  minutes === 0 ? '' : minutes,
];

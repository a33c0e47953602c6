import {
  forecast,
  type ForecastReport,
  forecastReport,
} from '../../src/domain/forecast/forecast.ts';
import { readHistory } from '../../src/domain/forecast/history.ts';
import { isoDate } from '../../src/domain/kernel/day.ts';
import { andThen, answer, type Result, wrong } from '../../src/domain/kernel/result.ts';
import {
  calendar,
  type CalendarEntry,
  type CalendarNotice,
} from '../../src/domain/schedule/calendar.ts';
import { planNotes } from '../../src/domain/now/plan-notes.ts';
import type { AnswersOf, CellAnswer, GivenTo, CellRows } from '../answer.ts';
import type { planRecords } from '../records/plan.ts';

export const planAnswers: AnswersOf<typeof planRecords> = {
  FORECAST: (given) =>
    andThen(historyOf(given), (values) => forecast(values, given.periods, given.season)),

  /** 19 of 20 futures lie between low and high. */
  FORECASTFIT: (given) =>
    andThen(historyOf(given), (values) =>
      andThen(forecastReport(values, given.periods, given.season), (report) =>
        answer(fitRows(report)),
      ),
    ),

  CALENDAR: ({ book, from }) =>
    andThen(calendar(book, from), ({ entries, notices, covered }) =>
      answer([...notices.map(noticeRow), ...entries.map(entryRow), ...covered.map(noticeRow)]),
    ),

  /** Only the headers where there is nothing to say. */
  PLANNOTES: ({ book, from, useLeftovers }) =>
    andThen(planNotes(book, from, { reuse: useLeftovers }), (notes) =>
      answer(
        notes.map(({ kind, about, sentence }) => [
          kind === 'assumed' ? 'Assumed' : about,
          sentence,
        ]),
      ),
    ),
};

/** The figures of one column or one row. */
function historyOf({ history }: GivenTo<(typeof planRecords)['FORECASTFIT']>): Result<number[]> {
  const width = Math.max(0, ...history.map((row) => row.length));
  return history.length > 1 && width > 1
    ? wrong('history must be one column or one row of figures.')
    : readHistory(history.flat());
}

function fitRows(report: ForecastReport): CellRows {
  const figures = [
    ...report.parameters.map(({ name, value }) => [name, value]),
    ['MAE', report.mae],
    ['RMSE', report.rmse],
    ['MASE', report.mase ?? ''],
  ];
  return [
    ['Method', report.method, '', ''],
    ['In words', report.inWords, '', ''],
    ...figures.map((line) => [...line, '', '']),
    ...report.periods.map(({ value, low, high }, index) => [
      `Period ${index + 1}`,
      value,
      low,
      high,
    ]),
  ];
}

const tasks = { shape: 'Shape tiles', pour: 'Pour', unmold: 'Unmold' } as const;

const entryRow = ({ day, task, batch, minutes }: CalendarEntry): CellAnswer[] => [
  isoDate(day),
  tasks[task],
  batch.design.name,
  batch.bars,
  minutes,
];

const noticeRow = ({ line, bars, minutes, sentence }: CalendarNotice): CellAnswer[] => [
  '',
  sentence,
  line.design.name,
  bars,
  minutes === 0 ? '' : minutes,
];

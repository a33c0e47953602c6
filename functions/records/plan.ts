import type { Argument, Records } from './record.ts';
import { book, from, useLeftovers } from './shared.ts';

const periods = {
  kind: 'count',
  help: 'How many periods to forecast.',
} as const satisfies Argument;

const season = {
  kind: 'count',
  help: 'Periods in a season: 12 if blank, 1 for none.',
  optional: true,
  ifBlank: 12,
} as const satisfies Argument;

export const planRecords = {
  FORECAST: {
    help: 'Forecasts the next periods of a history by the method that the history bears out best.',
    takes: {
      history: {
        kind: 'range',
        help: 'One figure for each period, oldest first; a blank between figures counts as 0.',
      },
      periods,
      season,
    },
    answers: 'numbers',
    restsOn: [],
  },
  FORECASTFIT: {
    help: 'How POUR.FORECAST forecasts a history: the method chosen, its weights, its errors, and how far each period may be off.',
    takes: { history: { kind: 'range', help: 'As for POUR.FORECAST.' }, periods, season },
    answers: { columns: ['Line', 'Value', 'Low', 'High'] },
    restsOn: [],
  },
  CALENDAR: {
    help: 'What to do on which day so that the plan is ready in time; what does not fit says so first, without a date.',
    takes: { book, from: { ...from, help: 'The first day there is to work; today if blank.' } },
    answers: { columns: ['Date', 'Task', 'Design', 'Bars', 'Minutes'] },
    restsOn: ['book', 'day'],
  },
  PLANNOTES: {
    help: 'What the plan leaves to see to: lines that do not fit and what would make them fit, what is missing in the tables, and what is taken for granted.',
    takes: { book, from, useLeftovers },
    answers: { columns: ['About', 'Note'] },
    restsOn: ['book', 'day'],
  },
} as const satisfies Records;

import type { Mold } from '../book/book.ts';
import { count } from '../kernel/count.ts';
import { type Day, isoDate, wholeDay } from '../kernel/day.ts';
import { exact } from '../kernel/exact.ts';
import { capacityOf, minutesFor } from './capacity.ts';
import { DayBook } from './day-book.ts';
import { largest } from './largest.ts';
import type { OpenLine } from './plan-lines.ts';
import { type LineSchedule, moldsOf, placeLine, schedule } from './schedule.ts';
import type { ScheduleSettings } from './work.ts';
import { hasWorkDay } from './work-days.ts';

/** What to change so that a plan which does not fit would. Each was tried on the whole plan. */
export interface FitAdvice {
  /** Minutes a day that are enough. */
  readonly minutesPerDay: number | undefined;
  /** A mold of which so many sections more are enough. */
  readonly moreSections: { readonly mold: Mold; readonly count: number } | undefined;
}

const MINUTES_IN_A_DAY = 1440;
const MOST_SECTIONS_MORE = 6;
const MOST_DAYS_LATER = 366;

/** Whether all of a line's bars are made on `from` or later. */
export function inTime({ parts, barsWithoutDay }: LineSchedule, from: Day): boolean {
  return barsWithoutDay === 0 && parts.every(({ firstDay }) => firstDay >= from);
}

export function adviceFor(
  lines: readonly OpenLine[],
  settings: ScheduleSettings,
  from: Day,
): FitAdvice {
  const minutesPerDay = enoughMinutes(lines, settings, from);
  const moreSections =
    minutesPerDay === undefined ? enoughSections(lines, settings, from) : undefined;
  return { minutesPerDay, moreSections };
}

function enoughMinutes(
  lines: readonly OpenLine[],
  settings: ScheduleSettings,
  from: Day,
): number | undefined {
  const has = settings.minutesPerDay;
  if (has === 0) return undefined;
  const most = MINUTES_IN_A_DAY - Math.ceil(has);
  // `largest` counts how far minutes can be taken off a full day with the plan still fitting.
  const fits = (fewer: number): boolean =>
    schedule(lines, { ...settings, minutesPerDay: MINUTES_IN_A_DAY - fewer }).every((line) =>
      inTime(line, from),
    );
  return fits(0) ? MINUTES_IN_A_DAY - largest(most, fits) : undefined;
}

function enoughSections(
  lines: readonly OpenLine[],
  settings: ScheduleSettings,
  from: Day,
): FitAdvice['moreSections'] {
  const capacity = capacityOf(settings);
  const fits = (fillsOf: (mold: Mold) => number): boolean =>
    schedule(lines, settings, { ...capacity, fillsOf }).every((line) => inTime(line, from));
  if (!fits(() => Infinity)) return undefined;
  for (const mold of moldsOf(lines)) {
    if (!fits((other) => (other === mold ? Infinity : capacity.fillsOf(other)))) continue;
    for (let count = 1; count <= MOST_SECTIONS_MORE; count += 1) {
      const more = { ...mold, sections: mold.sections?.plus(exact(count)) };
      if (fits((other) => capacity.fillsOf(other === mold ? more : other))) return { mold, count };
    }
  }
  return undefined;
}

/** The first later Ready by on which a line would be in time with the other lines' work as it is. */
export function laterReadyBy(
  late: LineSchedule,
  placed: readonly LineSchedule[],
  settings: ScheduleSettings,
  from: Day,
): Day | undefined {
  if (!hasWorkDay(settings)) return undefined;
  const { line } = late.open;
  const capacity = capacityOf(settings);
  const others = placed.filter((other) => other !== late).flatMap(({ parts }) => parts);
  const after = (days: number): Day => wholeDay(line.readyBy) + days;
  const fits = (days: number): boolean => {
    const dayBook = new DayBook(capacity);
    for (const { day, minutes, fills } of others.flatMap(({ work }) => work))
      dayBook.take(day, minutes, fills);
    const moved = { ...late.open, line: { ...line, readyBy: after(days) } };
    return inTime(placeLine(moved, settings, capacity, dayBook), from);
  };
  if (!fits(MOST_DAYS_LATER)) return undefined;
  const sooner = largest(MOST_DAYS_LATER - 1, (days) => fits(MOST_DAYS_LATER - days));
  return after(MOST_DAYS_LATER - sooner);
}

/** By how much a line does not fit and what would make it fit. */
export function lateSentence(
  { open, parts, barsWithoutDay }: LineSchedule,
  from: Day,
  { minutesPerDay, moreSections }: FitAdvice,
  readyBy: Day | undefined,
  settings: ScheduleSettings,
): string {
  const { design, planLine } = open.line;
  if (!hasWorkDay(settings))
    return `Plan line ${planLine} does not fit: every day of the week is a rest day in Settings. Leave a day to work.`;
  const oneBar = minutesFor(design, 1);
  if (settings.minutesPerDay > 0 && oneBar > settings.minutesPerDay)
    return `Plan line ${planLine} does not fit: one bar of ${design.name} takes ${count(figure(oneBar), 'minute')} with its setup, and a day has ${figure(settings.minutesPerDay)}. Raise Minutes per day in Settings.`;
  const overdue = parts.filter(({ firstDay }) => firstDay < from);
  const bars = barsWithoutDay + overdue.reduce((sum, part) => sum + part.bars, 0);
  const fitting = open.barsToMake - bars;
  const firstDay = Math.min(...overdue.map((part) => part.firstDay));
  const start =
    overdue.length === 0 ? '' : `, and work would have to begin on ${isoDate(firstDay)}`;
  const ways = [
    minutesPerDay === undefined ? [] : [`${count(minutesPerDay, 'minute')} a day`],
    moreSections === undefined ? [] : [`${moreSections.count} more of ${moreSections.mold.name}`],
    readyBy === undefined ? [] : [`Ready by ${isoDate(readyBy)}`],
    fitting + open.barsOnHand === 0 ? [] : [count(fitting + open.barsOnHand, 'bar')],
  ].flat();
  const way =
    ways.length === 0 ? 'Take it out of Plan.' : `It fits with ${ways.join(', or with ')}.`;
  return `Plan line ${planLine} does not fit: there is no time for ${bars} of its ${count(open.line.bars, 'bar')}${start}. ${way}`;
}

const figure = (minutes: number): number => Math.round(minutes * 100) / 100;

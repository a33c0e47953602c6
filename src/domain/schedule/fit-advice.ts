import { largestFit } from '../batching/day-choices.ts';
import { hasRoom } from '../batching/even-out.ts';
import type { SearchEffort } from '../batching/plan-batches.ts';
import type { Mold } from '../book/book.ts';
import { count } from '../kernel/count.ts';
import { type Day, isoDate, wholeDay } from '../kernel/day.ts';
import { exact } from '../kernel/exact.ts';
import { readyOn } from './batch.ts';
import { capacityOf, minutesFor } from './capacity.ts';
import { DayBook } from './day-book.ts';
import { roomFor } from './day-room.ts';
import { largest } from './largest.ts';
import type { OpenLine } from './plan-lines.ts';
import { moldsOf, type Schedule, schedule, type ScheduleOptions } from './schedule.ts';
import { needsShapingAhead } from './shape-ahead.ts';
import type { ScheduleSettings } from './work.ts';
import { hasWorkDay, workDaysBetween } from './work-days.ts';

/** What to change so that a plan which does not fit would. Each was tried on the whole plan. */
export interface FitAdvice {
  /** Minutes a day that are enough. */
  readonly minutesPerDay: number | undefined;
  /** A mold of which so many sections more are enough. */
  readonly moreSections: { readonly mold: Mold; readonly count: number } | undefined;
}

/** A line, and how many of its bars find no day. */
export interface MissingBars {
  readonly open: OpenLine;
  readonly bars: number;
}

const MINUTES_IN_A_DAY = 1440;
const MOST_SECTIONS_MORE = 6;
const MOST_DAYS_LATER = 366;
const MOST_DAYS_EARLIER = 60;

/** A quick look finds a plan that fits nearly as surely as a long one, and a dozen are asked for. */
const QUICK: readonly SearchEffort[] = [{ allWays: 40, someWays: 6, questions: 8000 }];

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

function fits(
  lines: readonly OpenLine[],
  settings: ScheduleSettings,
  from: Day,
  options: ScheduleOptions = {},
): boolean {
  const { missing } = schedule(lines, settings, from, { efforts: QUICK, ...options });
  return [...missing.values()].every((bars) => bars === 0);
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
  const fitsWithout = (fewer: number): boolean =>
    fits(lines, { ...settings, minutesPerDay: MINUTES_IN_A_DAY - fewer }, from);
  return fitsWithout(0) ? MINUTES_IN_A_DAY - largest(most, fitsWithout) : undefined;
}

function enoughSections(
  lines: readonly OpenLine[],
  settings: ScheduleSettings,
  from: Day,
): FitAdvice['moreSections'] {
  const capacity = capacityOf(settings);
  const fitsWith = (fillsOf: (mold: Mold) => number): boolean =>
    fits(lines, settings, from, { capacity: { ...capacity, fillsOf } });
  if (!fitsWith(() => Infinity)) return undefined;
  for (const mold of moldsOf(lines)) {
    if (!fitsWith((other) => (other === mold ? Infinity : capacity.fillsOf(other)))) continue;
    for (let count = 1; count <= MOST_SECTIONS_MORE; count += 1) {
      const more = { ...mold, sections: mold.sections?.plus(exact(count)) };
      if (fitsWith((other) => capacity.fillsOf(other === mold ? more : other)))
        return { mold, count };
    }
  }
  return undefined;
}

/**
 * A later Ready by on which a line would be in time: the bars that find no day are made on the first
 * days that have room beside all that is planned. Undefined where none has within a year.
 */
export function laterReadyBy(
  { open, bars }: MissingBars,
  { batches }: Schedule,
  settings: ScheduleSettings,
  from: Day,
): Day | undefined {
  const capacity = capacityOf(settings);
  const { design, readyBy } = open.line;
  if (!hasWorkDay(settings) || needsShapingAhead(design, new DayBook(capacity))) return undefined;
  const first = Math.max(from, wholeDay(readyBy) - MOST_DAYS_EARLIER);
  const days = workDaysBetween(settings, first, wholeDay(readyBy) + MOST_DAYS_LATER);
  const designs = [...new Set([design, ...batches.map((batch) => batch.design)])];
  const room = roomFor(designs, days, new DayBook(capacity));
  const planned = days.map((day) =>
    designs.map((each) =>
      batches
        .filter((batch) => batch.design === each && batch.pourDay === day)
        .reduce((sum, batch) => sum + batch.bars, 0),
    ),
  );
  let left = bars;
  for (const [at, day] of days.entries()) {
    const today = planned[at] ?? [];
    const [already = 0] = today;
    const made = largestFit(today, 0, already + left, () =>
      hasRoom(room, (some) => planned[some] ?? [], at),
    );
    const more = Math.max(0, made - already);
    left -= more;
    today[0] = already + more;
    if (left === 0)
      return Math.max(readyOn(design, day, { settings, capacity }), wholeDay(readyBy) + 1);
  }
  return undefined;
}

/** By how much a line does not fit and what would make it fit. */
export function missingSentence(
  { open, bars }: MissingBars,
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
  const fitting = open.line.bars - bars;
  const ways = [
    minutesPerDay === undefined ? [] : [`${count(minutesPerDay, 'minute')} a day`],
    moreSections === undefined ? [] : [`${moreSections.count} more of ${moreSections.mold.name}`],
    readyBy === undefined ? [] : [`Ready by ${isoDate(readyBy)}`],
    fitting === 0 ? [] : [count(fitting, 'bar')],
  ].flat();
  const way =
    ways.length === 0 ? 'Take it out of Plan.' : `It fits with ${ways.join(', or with ')}.`;
  return `Plan line ${planLine} does not fit: there is no time for ${bars} of its ${count(open.line.bars, 'bar')}. ${way}`;
}

const figure = (minutes: number): number => Math.round(minutes * 100) / 100;

import type { Design } from '../book/book.ts';
import { type Day, wholeDay } from '../kernel/day.ts';
import { type Capacity, dryingDays, settingDays } from './capacity.ts';
import type { OpenLine } from './plan-lines.ts';
import type { ScheduleSettings, Work } from './work.ts';
import { isWorkDay, workDayFrom } from './work-days.ts';

/** Bars of one design that are poured together on one day, with the work they take. */
export interface Batch {
  readonly design: Design;
  /** Good bars. */
  readonly bars: number;
  /** In the order in which it is done. */
  readonly work: readonly Work[];
  readonly firstDay: Day;
  readonly pourDay: Day;
  /** First day they can be sold. */
  readonly readyOn: Day;
}

/** When work may be done. */
export interface WorkTimes {
  readonly settings: ScheduleSettings;
  readonly capacity: Capacity;
}

/** A batch of which the pour and the shaping are placed, with what follows from the day of its pour. */
export function batchOf(
  design: Design,
  bars: number,
  pourDay: Day,
  placed: readonly Work[],
  times: WorkTimes,
): Batch {
  const unmoldDay = unmoldOn(design, pourDay, times);
  // Unmolding is part of the labour already counted on the pour.
  const unmold: Work[] =
    unmoldDay > pourDay ? [{ day: unmoldDay, task: 'unmold', minutes: 0 }] : [];
  return {
    design,
    bars,
    work: [...placed, ...unmold],
    firstDay: Math.min(...placed.map(({ day }) => day)),
    pourDay,
    readyOn: readyOn(design, pourDay, times),
  };
}

/** First day on which bars poured on a day can be sold: dry, and out of their mold. */
export const readyOn = (design: Design, pourDay: Day, times: WorkTimes): Day =>
  Math.max(pourDay + dryingDays(design), unmoldOn(design, pourDay, times));

/** The last day of work on which a line's bars can be poured; undefined where none is left from `from` on. */
export function lastPourDay({ line }: OpenLine, from: Day, times: WorkTimes): Day | undefined {
  const readyBy = wholeDay(line.readyBy);
  for (let day = readyBy - dryingDays(line.design); day >= from; day -= 1) {
    if (isWorkDay(times.settings, day) && readyOn(line.design, day, times) <= readyBy) return day;
  }
  return undefined;
}

function unmoldOn(design: Design, pourDay: Day, { settings, capacity }: WorkTimes): Day {
  const set = settingDays(design, capacity);
  return set === 0 ? pourDay : workDayFrom(settings, pourDay + set);
}

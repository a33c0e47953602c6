import type { Settings } from '../book/settings.ts';
import type { Day } from '../kernel/day.ts';

/** Monday is 1, Sunday 7. */
export const weekday = (day: Day): number => ((((Math.floor(day) - 2) % 7) + 7) % 7) + 1;

/** The Monday of a day's week. */
export const mondayOf = (day: Day): Day => Math.floor(day) - weekday(day) + 1;

export const isWorkDay = ({ restDays }: Pick<Settings, 'restDays'>, day: Day): boolean =>
  !restDays.includes(weekday(day));

export const hasWorkDay = ({ restDays }: Pick<Settings, 'restDays'>): boolean =>
  new Set(restDays).size < 7;

/** The day itself or the next one that is no rest day. Needs a week with a working day. */
export function workDayFrom(settings: Pick<Settings, 'restDays'>, day: Day): Day {
  let at = Math.floor(day);
  while (!isWorkDay(settings, at)) at += 1;
  return at;
}

/** Days of work that are looked at in all, and at the least before each day that something is due. */
const MOST_DAYS = 600;
const FEWEST_BEFORE = 20;

/**
 * The days of work, none before `from`, on which something due on some days can be made: as many before
 * each as anyone looks ahead. With lines years apart the years between them stay out.
 */
export function workDaysBefore(
  settings: Pick<Settings, 'restDays'>,
  from: Day,
  due: readonly Day[],
): Day[] {
  const distinct = new Set(due);
  const wanted = Math.max(FEWEST_BEFORE, Math.floor(MOST_DAYS / Math.max(1, distinct.size)));
  const days = new Set<Day>();
  for (const last of distinct) {
    for (let day = last, count = 0; day >= from && count < wanted; day -= 1) {
      if (!isWorkDay(settings, day)) continue;
      count += 1;
      days.add(day);
    }
  }
  return [...days].sort((a, b) => a - b);
}

/** The days there are to work from one day to another, both included. */
export function workDaysBetween(settings: Pick<Settings, 'restDays'>, from: Day, to: Day): Day[] {
  const days: Day[] = [];
  for (let day = from; day <= to; day += 1) if (isWorkDay(settings, day)) days.push(day);
  return days;
}

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

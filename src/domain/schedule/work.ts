import type { Settings } from '../book/settings.ts';
import type { Day } from '../kernel/day.ts';

/** One thing to do on one day. */
export interface Work {
  readonly day: Day;
  readonly task: 'shape' | 'pour' | 'unmold';
  readonly minutes: number;
}

/** What the maker allows for work. */
export type ScheduleSettings = Pick<Settings, 'minutesPerDay' | 'restDays'>;

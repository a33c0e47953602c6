import { count } from '../kernel/count.ts';
import type { Schedule } from './schedule.ts';

/** How far from the best a calendar may be; nothing where it is known to be the best. */
export function proofSentences({
  setupMinutes,
  leastMinutes,
  unmet,
  leastUnmet,
}: Schedule['proof']): string[] {
  if (leastUnmet < unmet)
    return [
      `The calendar leaves ${count(unmet, 'bar')} without a day; there may be one that leaves fewer, but none that leaves fewer than ${leastUnmet}. Looking further would take too long.`,
    ];
  if (leastMinutes < setupMinutes)
    return [
      `The calendar takes ${count(setupMinutes, 'minute')} of setup; there may be one that takes fewer, but none that takes fewer than ${leastMinutes}. Looking further would take too long.`,
    ];
  return [];
}

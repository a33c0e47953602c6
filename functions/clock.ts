import { type Day, dayOf } from '../src/domain/kernel/day.ts';

/** Today where the maker is: the only clock the functions look at, and only where a date is left blank. */
export function today(): Day {
  if (held !== undefined) return held;
  const now = new Date();
  return dayOf(now.getFullYear(), now.getMonth() + 1, now.getDate());
}

let held: Day | undefined;

/** Runs `work` as if it were `day`: the starter workbook's numbers must not depend on when it is built. */
export function asIfOn<T>(day: Day, work: () => T): T {
  held = day;
  try {
    return work();
  } finally {
    held = undefined;
  }
}

import { assert } from '../../domain/kernel/assert.ts';
import { type Day, readDay } from '../../domain/kernel/day.ts';

/** The serial number of a day we write ourselves as ISO text. */
export function serial(iso: string): Day {
  const day = readDay(iso);
  assert(day !== undefined, `"${iso}" is no date`);
  return day;
}

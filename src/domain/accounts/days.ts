import { type Day, isoDate, wholeDay } from '../kernel/day.ts';
import { answer, type Result, wrong } from '../kernel/result.ts';

/** Whole days, the first and the last included. */
export interface Days {
  readonly from: Day;
  readonly to: Day;
}

export function daysOf(from: Day, to: Day): Result<Days> {
  const days = { from: wholeDay(from), to: wholeDay(to) };
  if (days.to >= days.from) return answer(days);
  return wrong(
    `from is ${isoDate(days.from)} and to is ${isoDate(days.to)}, a day before it. Turn them round.`,
  );
}

export const isWithin = ({ from, to }: Days, day: Day): boolean =>
  wholeDay(day) >= from && wholeDay(day) <= to;

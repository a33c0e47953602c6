/** Stock after the use of each day of a simulated year; below 0 is what was missing. */
export type StockYear = readonly number[];

const WEEKS = 52;
const WEEK_DAYS = 7;

/** The lowest stock of each of the year's 52 weeks; the day left over belongs to the last. */
export function weeklyLows(year: StockYear): number[] {
  return Array.from({ length: WEEKS }, (_, week) => {
    const last = week === WEEKS - 1 ? undefined : (week + 1) * WEEK_DAYS;
    return Math.min(...year.slice(week * WEEK_DAYS, last));
  });
}

/** Days in a row with something missing: the first and the last day, counted from 0. */
export interface StockOut {
  readonly from: number;
  readonly to: number;
}

/** Each time that stock ran out in the year, in order of time. */
export function stockOuts(year: StockYear): StockOut[] {
  const found: StockOut[] = [];
  year.forEach((stock, day) => {
    if (stock >= 0) return;
    const last = found.at(-1);
    if (last?.to === day - 1) found[found.length - 1] = { ...last, to: day };
    else found.push({ from: day, to: day });
  });
  return found;
}

/** Days with something missing. */
export const daysWithout = (year: StockYear): number => year.filter((stock) => stock < 0).length;

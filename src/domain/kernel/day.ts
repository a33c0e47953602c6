/**
 * A date is the spreadsheet's serial number: whole days since 30 Dec 1899, a time of day as the
 * fraction. Only days from 1 March 1900 are taken, since the serials before it are off by one in
 * some programs.
 */
export type Day = number;

const UNIX_EPOCH_DAY: Day = 25_569;
export const FIRST_DAY: Day = 61;
export const LAST_DAY: Day = 2_958_465;
const DAY_MS = 86_400_000;
const ISO_DATE =
  /^(\d{4})-(\d{2})-(\d{2})(?:[T ](\d{2}):(\d{2})(?::(\d{2}(?:\.\d+)?))?(?:Z|[+-]\d{2}:\d{2})?)?$/u;

/**
 * Reads a serial number or ISO text (2026-11-25, optionally with a time, which is taken as the clock on
 * the wall showed it, wherever that was); undefined if it is neither.
 */
export function readDay(cell: string | number | boolean): Day | undefined {
  if (typeof cell === 'number') return cell >= FIRST_DAY && cell < LAST_DAY + 1 ? cell : undefined;
  if (typeof cell !== 'string') return undefined;
  const match = ISO_DATE.exec(cell.trim());
  if (match === null) return undefined;
  const [year = 0, month = 0, date = 0, hour = 0, minute = 0, second = 0] = match
    .slice(1)
    .map((part) => Number(part ?? 0));
  const ms = Date.UTC(year, month - 1, date, hour, minute) + Math.floor(second * 1000);
  const back = new Date(ms);
  const real =
    // A year below 100 would be taken for one of the 1900s.
    back.getUTCFullYear() === year &&
    back.getUTCMonth() === month - 1 &&
    back.getUTCDate() === date &&
    back.getUTCHours() === hour &&
    minute < 60 &&
    second < 60;
  const day = UNIX_EPOCH_DAY + ms / DAY_MS;
  return real && day >= FIRST_DAY ? day : undefined;
}

/** The day of a date of the calendar; 1 is January. */
export function dayOf(year: number, month: number, date: number): Day {
  return UNIX_EPOCH_DAY + Date.UTC(year, month - 1, date) / DAY_MS;
}

/** The whole day of a date with a time. */
export function wholeDay(day: Day): Day {
  return Math.floor(day);
}

/** ISO text such as 2026-11-25. */
export function isoDate(day: Day): string {
  return new Date((wholeDay(day) - UNIX_EPOCH_DAY) * DAY_MS).toISOString().slice(0, 10);
}

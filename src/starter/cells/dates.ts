import { readDay } from '../../domain/kernel/day.ts';
import { at as cellAt, type Formula, named, pour } from './formula.ts';
import { isError } from './cell-errors.ts';
import { bookName } from './names.ts';
import { blank, choose } from './native.ts';

const SERIAL_OF_1970 = 25_569;
const DAY_MS = 86_400_000;

/** The day that an ISO text such as 2026-12-01 names, as a date; blank for a blank. */
export const dateOfIso = (iso: Formula): Formula => ({
  text: `IF(LEN(${iso.text})=10,DATE(LEFT(${iso.text},4),MID(${iso.text},6,2),RIGHT(${iso.text},2)),"")`,
  work: (from) => {
    const found = iso.work(from);
    return typeof found === 'string' && found.length === 10 ? (readDay(found) ?? '#VALUE!') : '';
  },
});

/** The first day of the month that is so many months after a date's own. */
export const monthStart = (date: Formula, after: number): Formula => ({
  text: `DATE(YEAR(${date.text}),MONTH(${date.text})${after === 0 ? '' : `${after > 0 ? '+' : ''}${String(after)}`},1)`,
  work: (from) => {
    const day = date.work(from);
    if (typeof day !== 'number') return isError(day) ? day : '#VALUE!';
    const then = new Date((day - SERIAL_OF_1970) * DAY_MS);
    return Date.UTC(then.getUTCFullYear(), then.getUTCMonth() + after, 1) / DAY_MS + SERIAL_OF_1970;
  },
});

/** The Monday on or before a date. */
export const mondayBefore = (date: Formula): Formula => ({
  text: `(${date.text}-WEEKDAY(${date.text},2)+1)`,
  work: (from) => {
    const day = date.work(from);
    if (typeof day !== 'number') return isError(day) ? day : '#VALUE!';
    // Serial 2 was a Monday.
    return day - ((((day - 2) % 7) + 7) % 7);
  },
});

/** "2026-11" for a date. */
export const monthLabel = (date: Formula): Formula => ({
  text: `YEAR(${date.text})&"-"&RIGHT("0"&MONTH(${date.text}),2)`,
  work: (from) => {
    const day = date.work(from);
    if (typeof day !== 'number') return isError(day) ? day : '#VALUE!';
    return new Date((day - SERIAL_OF_1970) * DAY_MS).toISOString().slice(0, 7);
  },
});

/**
 * A date cell, or the functions' own today where it is blank. Never the spreadsheet's TODAY(), which changes
 * as a file is opened and takes all that hangs on it along, whether or not our functions are there to answer.
 */
export const orToday = (row: number, column: number): Formula => {
  const given = cellAt(row, column);
  return choose([given, '=', blank], pour('TODAY', named(bookName)), given);
};

import type { Book, Design } from '../book/book.ts';
import { itemOfBars } from '../book/find.ts';
import { type Day, isoDate, wholeDay } from '../kernel/day.ts';
import { historyOf, liveMoves } from '../stock/ledger-index.ts';

export interface MonthlySales {
  /** The months, oldest first, such as 2026-11. */
  readonly months: readonly string[];
  /** Bars sold in each; 0 in months without a sale. */
  readonly bars: readonly number[];
}

/**
 * Bars of a design sold in each whole month, from the month of its first sale to the last month that
 * was over before `today`. Sales taken back don't count.
 */
export function monthlySales(book: Book, design: Design, today: Day): MonthlySales {
  const sold = liveMoves(historyOf(book, itemOfBars(design)), today).filter(
    ({ reason }) => reason === 'sold',
  );
  const byMonth = new Map<string, number>();
  for (const { when, quantity } of sold) {
    byMonth.set(monthOf(when), (byMonth.get(monthOf(when)) ?? 0) - quantity);
  }
  const first = sold[0];
  const months = first === undefined ? [] : monthsBetween(first.when, today);
  return { months, bars: months.map((month) => byMonth.get(month) ?? 0) };
}

const monthOf = (day: Day): string => isoDate(day).slice(0, 7);

/** Months from that of `first` up to but without that of `today`. */
function monthsBetween(first: Day, today: Day): string[] {
  const months: string[] = [];
  for (let day = wholeDay(first); monthOf(day) < monthOf(today); day += 1) {
    if (months.at(-1) !== monthOf(day)) months.push(monthOf(day));
  }
  return months;
}

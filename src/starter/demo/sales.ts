import type { Book } from '../../domain/book/book.ts';
import { findDesign } from '../../domain/book/find.ts';
import type { Day } from '../../domain/kernel/day.ts';
import { type Exact, hundred, sum, zero } from '../../domain/kernel/exact.ts';
import { postSales } from '../../domain/ledger/post-sales.ts';
import type { SellingDay, SoldLine } from '../../domain/ledger/sale.ts';
import { changeForSales } from '../../workbook/change.ts';
import { type Diary, sound } from './diary.ts';
import { expectedBars, popularity } from './season.ts';
import { onHandOf } from './take-out.ts';

/** What one day's buyers take: about `bars` in all, recorded as the pane records a selling day. */
export function sellOn(
  diary: Diary,
  stall: Pick<SellingDay, 'soldOn' | 'fair' | 'by'>,
  bars: number,
  roll: () => number,
  nextId: () => string,
): void {
  const book = diary.book();
  const lines = soldLines(book, stall.soldOn, bars, roll);
  if (lines.length === 0) return;
  const day = { ...stall, id: nextId(), lines, fees: cardFees(book, lines) };
  const posting = sound(postSales(book, day, stall.soldOn));
  diary.apply(sound(changeForSales(posting, diary.names())));
}

/** Bars that passing buyers take in the week that ends on a day. */
export const barsOfTheWeek = (day: Day): number => expectedBars(day - 6, 7) * 0.55;

/** Bars that a fair takes; the nearer the holidays the more. */
export const barsAtFair = (day: Day): number => expectedBars(day - 14, 29) * 0.55;

/** What is asked for by chance, and never more of a design than is ready. */
function soldLines(book: Book, day: Day, bars: number, roll: () => number): SoldLine[] {
  return Object.entries(popularity).flatMap(([name, share]) => {
    const asked = Math.round(bars * share * (0.65 + 0.7 * roll()) + roll() - 0.5);
    // What was poured today is still setting.
    const sold = Math.min(
      asked,
      onHandOf(book, name, day - 1)
        .floor()
        .toNumber(),
    );
    const design = sound(findDesign(book, name));
    return sold <= 0 ? [] : [{ design, bars: sold, priceEach: design.price ?? zero }];
  });
}

/** The card firm's share of the day, a payment for each two bars. */
function cardFees(book: Book, lines: readonly SoldLine[]): Exact {
  const { cardFeePercent, cardFeeFixed } = book.settings;
  const takings = sum(lines.map(({ bars, priceEach }) => priceEach.times(bars)));
  const payments = Math.ceil(lines.reduce((total, { bars }) => total + bars, 0) / 2);
  const fees = takings.times(cardFeePercent).div(hundred).plus(cardFeeFixed.times(payments));
  return fees.toDecimalPlaces(2);
}

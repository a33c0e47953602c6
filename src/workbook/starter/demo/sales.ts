import type { Book } from '../../../domain/book/book.ts';
import { findDesign } from '../../../domain/book/find.ts';
import type { Day } from '../../../domain/kernel/day.ts';
import { hundred, toCell, zero } from '../../../domain/kernel/exact.ts';
import type { RowOfCells } from '../table-rows.ts';
import { type Diary, sound } from './diary.ts';
import { expectedBars, popularity } from './season.ts';
import { movesOut, onHandOf } from './take-out.ts';

/** Where bars are sold on a day, and by whom. */
export interface Stall {
  readonly day: Day;
  /** "" for passing buyers. */
  readonly fair: string;
  readonly by: string;
}

/** What one day's buyers take: about `bars` in all, never more of a design than is ready. */
export function sellOn(
  diary: Diary,
  stall: Stall,
  bars: number,
  roll: () => number,
  nextId: () => string,
): void {
  const book = diary.book();
  for (const [design, share] of Object.entries(popularity)) {
    const asked = Math.round(bars * share * (0.65 + 0.7 * roll()) + roll() - 0.5);
    // What was poured today is still setting.
    const sold = Math.min(
      asked,
      onHandOf(book, design, stall.day - 1)
        .floor()
        .toNumber(),
    );
    if (sold <= 0) continue;
    const sale = nextId();
    diary.add('sales', saleRow(book, stall, sale, design, sold));
    movesOut(book, {
      entry: sale,
      when: stall.day,
      reason: 'sold',
      item: design,
      quantity: sold,
      by: stall.by,
      note: stall.fair,
    }).forEach((move) => {
      diary.add('moves', move);
    });
  }
}

/** Bars that passing buyers take in the week that ends on a day. */
export const barsOfTheWeek = (day: Day): number => expectedBars(day - 6, 7) * 0.45;

/** Bars that a fair takes; the nearer the holidays the more. */
export const barsAtFair = (day: Day): number => expectedBars(day - 14, 29) * 0.6;

function saleRow(
  book: Book,
  { day, fair }: Stall,
  sale: string,
  design: string,
  bars: number,
): RowOfCells<'sales'> {
  const price = sound(findDesign(book, design)).price ?? zero;
  const { cardFeePercent, cardFeeFixed } = book.settings;
  const fees = price.times(bars).times(cardFeePercent).div(hundred).plus(cardFeeFixed);
  return {
    sale,
    soldOn: day,
    design,
    bars,
    priceEach: toCell(price),
    fair,
    fees: toCell(fees.toDecimalPlaces(2)),
  };
}

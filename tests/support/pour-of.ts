import type { Book, Design } from '../../src/domain/book/book.ts';
import { findDesign } from '../../src/domain/book/find.ts';
import type { Pour } from '../../src/domain/ledger/pour.ts';
import { exact } from '../../src/domain/kernel/exact.ts';
import { type Day, readDay } from '../../src/domain/kernel/day.ts';
import { planPour, type PourWanted } from '../../src/domain/ledger/plan-pour.ts';
import { sure } from './ledger-of.ts';

/** A day as ISO text, for tests that write dates a person can read. */
export const day = (iso: string): number => readDay(iso) ?? Number.NaN;

/** Whatever of the bars started is neither good nor a second. */
const lostOf = (
  { yieldShare }: Design,
  bars: number,
  { good = bars, seconds = 0 }: Partial<Pour>,
): number => Math.max(0, exact(bars).div(yieldShare).ceil().toNumber() - good - seconds);

/** A pour that went as planned, all bars good; say what differs. */
export const pourOf =
  (
    name: string,
    bars: number,
    { useLeftovers = false, ...differs }: Partial<Omit<Pour, 'plan'> & PourWanted> = {},
  ) =>
  (book: Book, today?: Day): Pour => {
    const { poured = day('2024-03-01') } = differs;
    const design = sure(findDesign(book, name));
    const wanted = { design, bars, poured, useLeftovers };
    return {
      batch: 'B1',
      poured,
      plan: sure(planPour(book, wanted, today ?? poured)),
      good: bars,
      seconds: 0,
      lost: lostOf(design, bars, differs),
      minutes: undefined,
      weighed: new Map(),
      sparePieces: new Map(),
      leftoverG: new Map(),
      countIsOff: new Set(),
      by: '',
      note: '',
      ...differs,
    };
  };

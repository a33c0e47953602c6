import fc from 'fast-check';
import type { Book } from '../../src/domain/book/book.ts';
import type { Day } from '../../src/domain/kernel/day.ts';
import { exact } from '../../src/domain/kernel/exact.ts';
import { planPour } from '../../src/domain/ledger/plan-pour.ts';
import type { Pour } from '../../src/domain/ledger/pour.ts';
import { designNames, FIRST_DAY, LAST_DAY, newWorkshop } from './arbitrary-book.ts';
import { itemsOf, post, sure, undo } from './ledger-of.ts';
import type { Tables } from './small-book.ts';

/** A pour as its form is filled in, but for its batch. */
export interface PourWish {
  readonly design: string;
  readonly day: number;
  readonly bars: number;
  readonly goodShare: number;
  readonly useLeftovers: boolean;
  readonly countIsOff: boolean;
}

export const pourWish: fc.Arbitrary<PourWish> = fc.record({
  design: fc.constantFrom(...designNames),
  day: fc.integer({ min: 30, max: 120 }).map((day) => FIRST_DAY + day),
  bars: fc.integer({ min: 1, max: 9 }),
  goodShare: fc.constantFrom(0, 0.5, 1, 1, 1),
  useLeftovers: fc.boolean(),
  countIsOff: fc.boolean(),
});

/** The pour a wish asks for, in a book that has its design. */
export function pourOf(wish: PourWish, batch: string): (book: Book, today?: Day) => Pour {
  return (book, today = LAST_DAY) => {
    const design = book.designs.get(wish.design.toLowerCase());
    if (design === undefined) throw new Error(`There is no design ${wish.design}.`);
    const started = exact(wish.bars).div(design.yieldShare).ceil().toNumber();
    const good = Math.floor(wish.bars * wish.goodShare);
    const seconds = Math.min(1, started - good);
    return {
      batch,
      poured: wish.day,
      plan: sure(planPour(book, { ...wish, design, poured: wish.day }, today)),
      good,
      seconds,
      lost: started - good - seconds,
      minutes: undefined,
      weighed: new Map(),
      sparePieces: new Map(),
      leftoverG: new Map(),
      countIsOff: new Set(wish.countIsOff ? itemsOf(book).map(({ name }) => name) : []),
      by: 'me',
      note: '',
    };
  };
}

/** Tables with a history that posting itself wrote: pours, and some of them taken back. */
export const workedWorkshop: fc.Arbitrary<Tables> = fc
  .tuple(newWorkshop, fc.array(fc.tuple(pourWish, fc.boolean()), { maxLength: 3 }))
  .map(([tables, wishes]) =>
    wishes.reduce((before, [wish, takenBack], at) => {
      const after = post(before, pourOf(wish, `T${at}`), LAST_DAY)?.after ?? before;
      return takenBack ? (undo(after, `T${at}`, LAST_DAY) ?? after) : after;
    }, tables),
  );

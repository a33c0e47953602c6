import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Book } from '../../src/domain/book/book.ts';
import { Exact, sum } from '../../src/domain/kernel/exact.ts';
import { currencyDecimals } from '../../src/domain/money/currency.ts';
import { onHand } from '../../src/domain/stock/on-hand.ts';
import { stockValue } from '../../src/domain/stock/valuation.ts';
import { LAST_DAY } from '../support/arbitrary-book.ts';
import { pourOf as anyPour, pourWish, workedWorkshop } from '../support/arbitrary-pours.ts';
import { itemsOf, post, readTables, sure, undo } from '../support/ledger-of.ts';
import { type PiecesToShape, shape, shapedOf } from '../support/shaped-of.ts';
import { type Tables, withSetting } from '../support/small-book.ts';

describe('shaping pieces ahead', () => {
  const pieces = fc.record({
    wanted: fc
      .uniqueArray(
        fc.tuple(
          fc.constantFrom('Slate', 'Teal', 'Tide 10', 'Clear base'),
          fc.constantFrom('Tiles', 'Round tiles', 'Heron'),
          fc.integer({ min: 1, max: 60 }),
        ),
        { minLength: 1, maxLength: 3, selector: ([soap, mold]) => `${soap} ${mold}` },
      )
      .map((rows): PiecesToShape => rows),
    whole: fc.constantFrom(0, 0.9, 1, 1),
  });
  const valuations = fc.constantFrom('FIFO', 'Average');

  /** All stock together; undefined where something has no value or was taken before it was there. */
  function worth(book: Book): Exact | undefined {
    const items = itemsOf(book);
    const values = items.map((item) => stockValue(book, item, LAST_DAY));
    if (items.some((item) => onHand(book, item, LAST_DAY).isNegative())) return undefined;
    return values.some((value) => !value.ok) ? undefined : sum(values.map(sure));
  }

  const broken = (wanted: PiecesToShape, whole: number) => (book: Book, today: number) => {
    const plain = shapedOf(wanted, { useLeftovers: true, batch: 'S' })(book, today);
    const sparePieces = new Map(
      plain.plan.melts.flatMap(({ soap, shapes }) =>
        shapes.map(
          ({ mold, sparePieces: made }) =>
            [`${soap.name} × ${mold.name}`, made.times(whole).floor()] as const,
        ),
      ),
    );
    return { ...plain, ...(whole < 1 && { sparePieces }) };
  };

  it('what comes in is worth what went out, to the smallest unit of the currency', () => {
    let done = 0;
    fc.assert(
      fc.property(workedWorkshop, pieces, (tables, { wanted, whole }) => {
        const shaped = shape(tables, broken(wanted, whole), LAST_DAY);
        if (shaped === undefined) return;
        done += 1;
        const { moves, writtenOff } = shaped.posting;
        const values = moves.map(({ value }) => value);
        expect(sum([...values, writtenOff]).toString()).toBe('0');
        if (whole === 1) expect(writtenOff.toString()).toBe('0');
        expect(moves.some(({ reason }) => reason === 'made')).toBe(false);
      }),
      { numRuns: 120 },
    );
    expect(done).toBeGreaterThan(20);
  });

  it('in any order of stages all stock keeps its worth, and undoing gives back what was', () => {
    let both = 0;
    fc.assert(
      fc.property(
        workedWorkshop,
        pieces,
        pourWish,
        fc.boolean(),
        valuations,
        (start, { wanted }, wish, first, valuation) => {
          const tables = withSetting(start, 'Valuation', valuation);
          const pour = anyPour(
            { ...wish, day: LAST_DAY, useLeftovers: true, countIsOff: false },
            'P',
          );
          const stages = [
            (of: Tables) => shape(of, broken(wanted, 1), LAST_DAY),
            (of: Tables) => post(of, pour, LAST_DAY),
          ];
          const [one, two] = first ? stages : stages.reverse();
          const half = one?.(tables);
          const whole = half && two?.(half.after);
          if (half === undefined || whole === undefined) return;
          const [before, after] = [readTables(tables), readTables(whole.after)].map(worth);
          if (before === undefined || after === undefined) return;
          both += 1;
          const smallest = new Exact(10).pow(-currencyDecimals(half.before.settings.currency));
          const gone = before
            .minus(after)
            .minus(half.posting.writtenOff)
            .minus(whole.posting.writtenOff);
          const lines = half.posting.moves.length + whole.posting.moves.length;
          expect(
            gone.abs().lte(smallest.times(lines)),
            `${before.toString()} to ${after.toString()}`,
          ).toBe(true);
          const undone = undo(whole.after, first ? 'P' : 'S', LAST_DAY) ?? {};
          const [left, was] = [undone, half.after].map((of) => {
            const book = readTables(of);
            return itemsOf(book)
              .map((item) => [item.name, onHand(book, item, LAST_DAY).toString()])
              .filter(([, some]) => some !== '0')
              .sort();
          });
          expect(left).toEqual(was);
        },
      ),
      { numRuns: 120 },
    );
    expect(both).toBeGreaterThan(20);
  });
});

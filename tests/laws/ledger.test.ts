import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Book } from '../../src/domain/book/book.ts';
import { Exact, exact, sum } from '../../src/domain/kernel/exact.ts';
import { compareLots } from '../../src/domain/kernel/names.ts';
import { postBatch } from '../../src/domain/ledger/post-batch.ts';
import { currencyDecimals } from '../../src/domain/money/currency.ts';
import { onHand } from '../../src/domain/stock/on-hand.ts';
import { stockValue, unitCost } from '../../src/domain/stock/valuation.ts';
import { changeForBatch } from '../../src/workbook/change.ts';
import { findTables } from '../../src/workbook/find-tables.ts';
import { applyChange } from '../support/apply-change.ts';
import { LAST_DAY } from '../support/arbitrary-book.ts';
import { pourOf, pourWish, workedWorkshop } from '../support/arbitrary-pours.ts';
import { itemsOf, post, readTables, sure, undo } from '../support/ledger-of.ts';
import { tableData, withSetting } from '../support/small-book.ts';

const runs = { numRuns: 250 };
const valuations = fc.constantFrom('FIFO', 'Average');

/** Stock and value of everything, exactly, under the book's own valuation; a failure is its sentence. */
function shelves(book: Book): Record<string, string> {
  return Object.fromEntries(
    itemsOf(book)
      .filter((item) => !onHand(book, item, LAST_DAY).isZero() || item.kind === 'material')
      .map((item) => {
        const value = stockValue(book, item, LAST_DAY);
        const worth = value.ok ? value.value.toString() : value.failure.sentence;
        return [item.name, `${onHand(book, item, LAST_DAY).toString()} worth ${worth}`];
      }),
  );
}

/** All stock together; undefined where something has no value or was taken before it was there. */
function worth(book: Book): Exact | undefined {
  const items = itemsOf(book);
  const values = items.map((item) => stockValue(book, item, LAST_DAY));
  const isOwed = items.some((item) => onHand(book, item, LAST_DAY).isNegative());
  if (isOwed || values.some((value) => !value.ok)) return undefined;
  return sum(values.map(sure));
}

describe('posting a pour', () => {
  it('puts in stock the value that it took out, to the smallest unit of the currency', () => {
    fc.assert(
      fc.property(workedWorkshop, pourWish, (tables, wish) => {
        const posted = post(tables, pourOf(wish, 'X'), LAST_DAY);
        if (posted === undefined) return;
        const { moves, writtenOff, batch } = posted.posting;
        const smallest = new Exact(10).pow(-currencyDecimals(posted.before.settings.currency));
        const values = moves
          .filter(({ reason }) => reason !== 'counted')
          .map(({ value, quantity, reason }) => {
            expect(value.mod(smallest).isZero(), `${reason} ${value}`).toBe(true);
            if (!value.isZero()) expect(value.isNegative()).toBe(quantity.isNegative());
            return value;
          });
        expect(sum([...values, writtenOff]).toString()).toBe('0');
        const bars = moves.find(({ reason }) => reason === 'made');
        expect(bars === undefined ? writtenOff.toString() : bars.value.toString()).toBe(
          batch.materialCost.toString(),
        );
      }),
      runs,
    );
  });

  it('leaves all stock together worth what it was, to the smallest unit a line', () => {
    fc.assert(
      fc.property(workedWorkshop, pourWish, valuations, (tables, wish, valuation) => {
        // On the last day nothing else happens, and what moved without a Value has no worth to keep.
        const posted = post(
          withSetting(tables, 'Valuation', valuation),
          pourOf({ ...wish, day: LAST_DAY, useLeftovers: true }, 'X'),
          LAST_DAY,
        );
        if (posted === undefined || posted.posting.countedIn.length > 0) return;
        const { moves, writtenOff } = posted.posting;
        const [before, after] = [posted.before, readTables(posted.after)].map(worth);
        if (before === undefined || after === undefined) return;
        const smallest = new Exact(10).pow(-currencyDecimals(posted.before.settings.currency));
        const gone = before.minus(after).minus(writtenOff).abs();
        expect(gone.lte(smallest.times(moves.length)), `${before} to ${after}`).toBe(true);
      }),
      runs,
    );
  });

  it('leaves it worth what it was with two pours on one day, whichever is named first', () => {
    let together = 0;
    const names = fc.constantFrom(['X', 'Y'] as const, ['Y', 'X'] as const);
    fc.assert(
      fc.property(
        workedWorkshop,
        pourWish,
        pourWish,
        names,
        (tables, one, other, [first, second]) => {
          const onLastDay = { day: LAST_DAY, useLeftovers: true, countIsOff: false };
          const averaged = withSetting(tables, 'Valuation', 'Average');
          const once = post(averaged, pourOf({ ...one, ...onLastDay }, first), LAST_DAY);
          if (once === undefined) return;
          const twice = post(once.after, pourOf({ ...other, ...onLastDay }, second), LAST_DAY);
          if (twice === undefined) return;
          const [before, after] = [once.before, readTables(twice.after)].map(worth);
          if (before === undefined || after === undefined) return;
          together += 1;
          const smallest = new Exact(10).pow(-currencyDecimals(once.before.settings.currency));
          const writtenOff = once.posting.writtenOff.plus(twice.posting.writtenOff);
          const gone = before.minus(after).minus(writtenOff).abs();
          const lines = once.posting.moves.length + twice.posting.moves.length;
          expect(gone.lte(smallest.times(lines)), `${before} to ${after}`).toBe(true);
        },
      ),
      { numRuns: 120 },
    );
    expect(together).toBeGreaterThan(20);
  });

  it('takes exactly what was needed, however many lots that takes', () => {
    fc.assert(
      fc.property(workedWorkshop, pourWish, (tables, wish) => {
        const posted = post(tables, pourOf(wish, 'X'), LAST_DAY);
        if (posted === undefined) return;
        const after = readTables(posted.after);
        for (const { item, before, after: expected } of posted.posting.changes) {
          const moved = posted.posting.moves.filter((move) => move.item.name === item.name);
          expect(before.plus(sum(moved.map(({ quantity }) => quantity))).toString()).toBe(
            expected.toString(),
          );
          expect(onHand(posted.before, item, wish.day).toString()).toBe(before.toString());
          expect(onHand(after, item, wish.day).toString()).toBe(expected.toString());
        }
      }),
      runs,
    );
  });

  it('leaves no earlier lot with stock in it when it takes from a later one', () => {
    fc.assert(
      fc.property(workedWorkshop, pourWish, (tables, wish) => {
        const posted = post(tables, pourOf(wish, 'X'), LAST_DAY);
        if (posted === undefined) return;
        const book = readTables(posted.after);
        const left = (lot: string): Exact =>
          sum([
            ...book.lots
              .filter((known) => known.lot === lot)
              .map(({ quantity }) => exact(quantity)),
            ...book.ledger.moves
              .filter((move) => move.lot === lot)
              .map(({ quantity }) => exact(quantity)),
          ]);
        const order = [...book.lots].sort(
          (a, b) =>
            (a.bestBefore ?? Infinity) - (b.bestBefore ?? Infinity) ||
            a.received - b.received ||
            compareLots(a.lot, b.lot),
        );
        for (const move of posted.posting.moves) {
          if (move.reason !== 'used' || move.item.kind !== 'material') continue;
          const { material } = move.item;
          const lots = order.filter(
            (lot) => lot.material.name === material.name && lot.received <= wish.day,
          );
          const earlier = lots.slice(
            0,
            lots.findIndex((lot) => lot.lot === move.lot),
          );
          for (const { lot } of earlier)
            expect(left(lot).lte(0), `${move.lot} before ${lot}`).toBe(true);
        }
      }),
      runs,
    );
  });

  it('takes no item below nothing where nobody says that the count is off', () => {
    fc.assert(
      fc.property(workedWorkshop, pourWish, (tables, wish) => {
        const posted = post(tables, pourOf({ ...wish, countIsOff: false }, 'X'), LAST_DAY);
        if (posted === undefined) return;
        const book = readTables(posted.after);
        for (const { item } of posted.posting.changes) {
          expect(onHand(book, item, LAST_DAY).isNegative(), item.name).toBe(false);
        }
      }),
      runs,
    );
  });

  it('twice equals once', () => {
    fc.assert(
      fc.property(workedWorkshop, pourWish, (tables, wish) => {
        const pour = pourOf(wish, 'X');
        const once = post(tables, pour, LAST_DAY);
        if (once === undefined) return;
        // The same form sent again over the same workbook: the same lines, each added once.
        const again = sure(changeForBatch(once.posting, findTables(tableData(once.after))));
        expect(applyChange(once.after, again)).toEqual(once.after);
        // The form sent again after the workbook was read anew: refused.
        const book = readTables(once.after);
        const refused = postBatch(book, pour(book), LAST_DAY);
        expect(refused.ok).toBe(false);
        if (!refused.ok) expect(refused.failure.sentence).toMatch(/Batch X is in Batches already/);
      }),
      runs,
    );
  });
});

describe('undoing a batch', () => {
  it('restores stock and value of every item exactly', () => {
    let undone = 0;
    fc.assert(
      fc.property(workedWorkshop, pourWish, (tables, wish) => {
        const before = readTables(tables);
        const posted = post(tables, pourOf(wish, 'X'), LAST_DAY);
        if (posted === undefined) return;
        const back = undo(posted.after, 'X', LAST_DAY);
        if (back === undefined) throw new Error('Nothing has happened since, yet undo is refused.');
        undone += 1;
        expect(shelves(readTables(back))).toEqual(shelves(before));
        // Nothing was taken out of the ledger to do so.
        expect((back['LedgerLines'] ?? []).slice(0, posted.after['LedgerLines']?.length)).toEqual(
          posted.after['LedgerLines'],
        );
        expect(undo(back, 'X', LAST_DAY)).toBeUndefined();
      }),
      runs,
    );
    expect(undone).toBeGreaterThan(50);
  });
});

describe('stock value', () => {
  it('is never below nothing, and unit cost neither', () => {
    fc.assert(
      fc.property(workedWorkshop, (tables) => {
        const book = readTables(tables);
        for (const item of itemsOf(book)) {
          if (onHand(book, item, LAST_DAY).isNegative()) continue;
          for (const result of [stockValue(book, item, LAST_DAY), unitCost(book, item, LAST_DAY)]) {
            if (result.ok) expect(result.value.gte(0), item.name).toBe(true);
          }
        }
      }),
      runs,
    );
  });
});

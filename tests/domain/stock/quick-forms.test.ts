import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Book, Move } from '../../../src/domain/book/book.ts';
import { Exact, exact, sum, zero } from '../../../src/domain/kernel/exact.ts';
import { compareNames } from '../../../src/domain/kernel/names.ts';
import { daysWithUse } from '../../../src/domain/reorder/daily-use.ts';
import { historyOf, liveMoves } from '../../../src/domain/stock/ledger-index.ts';
import { ItemHistory } from '../../../src/domain/stock/item-history.ts';
import { onHand } from '../../../src/domain/stock/on-hand.ts';
import { Pool } from '../../../src/domain/stock/pool.ts';
import { live } from '../../../src/domain/stock/reversals.ts';
import { Shelf } from '../../../src/domain/stock/shelf.ts';
import { LAST_DAY } from '../../support/arbitrary-book.ts';
import { workedWorkshop } from '../../support/arbitrary-pours.ts';
import { itemsOf, ledgerOf, readTables } from '../../support/ledger-of.ts';

/** Quantities as cells hold them: grams and tenths, what counts in millionths, and what does not. */
const quantity = fc.oneof(
  fc.integer({ min: 1, max: 400 }).map((tenths) => tenths / 10),
  fc.integer({ min: 1, max: 9_000_000 }).map((count) => count / 1_000_000),
  fc.constantFrom(0.1 + 0.2, 1e-7, 1 / 3, 1e11, 123_456_789.123456),
);
const lot = fc.constantFrom('', 'A', 'b', ' B', 'C');
const step = fc.record({ isPut: fc.boolean(), quantity, lot, day: fc.nat(9), cents: fc.nat(9999) });

describe('what a shelf counts in whole millionths', () => {
  it('leaves the layers and the debt that taking exactly leaves', () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 40 }), (steps) => {
        const [quick, plain] = [new Shelf(), new Shelf()];
        for (const { isPut, quantity: amount, lot: named, day } of steps) {
          for (const shelf of [quick, plain]) {
            if (isPut)
              shelf.put({
                lot: named,
                came: day,
                bestBefore: undefined,
                quantity: exact(amount),
                unitValue: undefined,
                entry: '',
              });
          }
          if (isPut) continue;
          quick.takeOff(amount, named);
          plain.take(exact(amount), named);
        }
        expect(inWords(quick)).toEqual(inWords(plain));
      }),
      { numRuns: 1000 },
    );
  });
});

const inWords = (shelf: Shelf): string[] => [
  ...shelf.layers.map(({ lot: name, came, quantity: left }) => `${name} ${came} ${left}`),
  `owed ${shelf.owed}`,
];

describe('the pool at moving average', () => {
  it('is worth what the average worked out anew at each step makes it', () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 40 }), (steps) => {
        const pool = new Pool();
        let plain = { quantity: zero, value: zero };
        const newest = exact(0.37);
        for (const { isPut, quantity: amount, cents } of steps) {
          const value = exact(cents / 100);
          const unit = value.div(exact(amount));
          if (isPut) pool.putIn(amount, value, unit);
          else pool.takeOut(amount, newest);
          const average = plain.quantity.gt(0) ? plain.value.div(plain.quantity) : newest;
          plain = isPut
            ? poolAfter(plain, exact(amount), value, unit)
            : poolAfter(plain, exact(-amount), exact(-amount).times(average), average);
          expect(pool.quantity.toString()).toBe(plain.quantity.toString());
          // The plain way divides at every step, which leaves it a little off in its last digits.
          const size = Exact.max(1, plain.value.abs(), average.times(1e12));
          expect(pool.value.minus(plain.value).abs().div(size).lte('1e-25')).toBe(true);
        }
      }),
      { numRuns: 500 },
    );
  });

  it('keeps whole what three thirds take away', () => {
    const pool = new Pool();
    pool.putIn(9, exact(10), exact(10).div(9));
    pool.takeOut(3, zero);
    pool.takeOut(3, zero);
    expect(pool.value.times(3).toFixed(30)).toBe(exact(10).toFixed(30));
    pool.takeOut(3, zero);
    expect(pool.value.toString()).toBe('0');
  });
});

interface PlainPool {
  readonly quantity: Exact;
  readonly value: Exact;
}

function poolAfter(pool: PlainPool, added: Exact, value: Exact, unit: Exact): PlainPool {
  const after = pool.quantity.plus(added);
  if (after.isZero()) return { quantity: after, value: zero };
  const isOwed = pool.quantity.isNegative();
  return { quantity: after, value: isOwed ? after.times(unit) : pool.value.plus(value) };
}

describe('what a book keeps of an item', () => {
  it('answers for any day as the ledger read through from its start', () => {
    fc.assert(
      fc.property(workedWorkshop, fc.nat(400), (tables, back) => {
        const book = readTables(tables);
        const day = LAST_DAY - back;
        for (const item of itemsOf(book)) {
          const { lots, moves } = historyOf(book, item);
          const stock = [
            ...lots.filter(({ received }) => received < day + 1),
            ...moves.filter(({ when }) => when < day + 1),
          ];
          expect(onHand(book, item, day).toString()).toBe(
            sum(stock.map((line) => exact(line.quantity))).toString(),
          );
        }
      }),
      { numRuns: 60 },
    );
  });

  it('knows what was used on each of the last days as the live moves say', () => {
    fc.assert(
      fc.property(workedWorkshop, fc.nat(400), (tables, back) => {
        const book = readTables(tables);
        const day = LAST_DAY - back;
        for (const item of itemsOf(book)) {
          const used = plainlyLive(historyOf(book, item).moves, day).filter(
            ({ reason }) => reason === 'used',
          );
          const byDay = new Map<number, Exact>();
          for (const { when, quantity } of used.filter(
            ({ when }) => Math.floor(when) > day - book.settings.historyDays,
          ))
            byDay.set(
              Math.floor(when),
              (byDay.get(Math.floor(when)) ?? zero).minus(exact(quantity)),
            );
          const days = daysWithUse(book, item, day);
          expect(days.ok).toBe(used.length > 0);
          if (days.ok) expect(days.value.map(String)).toEqual([...byDay.values()].map(String));
        }
      }),
      { numRuns: 60 },
    );
  });

  const move = fc.record({
    when: fc.integer({ min: 0, max: 12 }).map((half) => 45_000 + half / 2),
    quantity: fc.constantFrom(-2, -1, 1, 2),
    reason: fc.constantFrom('used', 'reversed', 'counted'),
    note: fc.integer({ min: 0, max: 12 }).map((at) => `E${at}`),
  });

  it('knows the live moves of any day, reversals of later and earlier days among them', () => {
    fc.assert(
      fc.property(fc.array(move, { maxLength: 12 }), fc.nat(7), (drawn, back) => {
        const item = { name: 'Fog' };
        const moves = drawn.map((line, at) => ({ ...line, item, entry: `E${at}` }));
        const ledger = ledgerOf(moves as unknown as Move[]);
        const history = new ItemHistory(ledger, Int32Array.from(moves.keys()), []);
        for (const day of [45_007 - back, 45_000 + back, Infinity]) {
          expect(liveMoves(history, day)).toEqual(plainlyLive(history.moves, day));
        }
      }),
      { numRuns: 1000 },
    );
  });

  it('keeps nothing of an item whose moves changed', () => {
    fc.assert(
      fc.property(workedWorkshop, (tables) => {
        const before = readTables(tables);
        for (const item of itemsOf(before)) onHand(before, item, LAST_DAY);
        const [changed, ...rest] = before.ledger.moves;
        if (changed === undefined) return;
        const quantity = changed.quantity + 1;
        // As cells show them: binary adding can be off in the last of their digits.
        const added = exact(quantity).minus(exact(changed.quantity));
        const moves = [{ ...changed, quantity }, ...rest];
        const after: Book = { ...before, ledger: ledgerOf(moves) };
        for (const item of itemsOf(after)) {
          const gained = onHand(after, item, LAST_DAY).minus(onHand(before, item, LAST_DAY));
          expect(gained.toString()).toBe(
            (item.name === changed.item.name ? added : zero).toString(),
          );
        }
      }),
      { numRuns: 60 },
    );
  });
});

function plainlyLive(moves: readonly Move[], day: number): Move[] {
  return live(moves.filter(({ when }) => when < day + 1)).sort(
    (a, b) =>
      Math.floor(a.when) - Math.floor(b.when) ||
      Math.sign(b.quantity) - Math.sign(a.quantity) ||
      a.when - b.when ||
      compareNames(a.entry, b.entry),
  );
}

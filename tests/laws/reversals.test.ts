import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Book } from '../../src/domain/book/book.ts';
import { healthCheck } from '../../src/domain/health/health-check.ts';
import { exact } from '../../src/domain/kernel/exact.ts';
import { nameKey } from '../../src/domain/kernel/names.ts';
import type { MoveLine } from '../../src/domain/ledger/posting.ts';
import { postSales } from '../../src/domain/ledger/post-sales.ts';
import { undoBatch } from '../../src/domain/ledger/undo-batch.ts';
import { undoSales } from '../../src/domain/ledger/undo-sales.ts';
import { onHand } from '../../src/domain/stock/on-hand.ts';
import { changeForSales } from '../../src/workbook/change.ts';
import { findTables } from '../../src/workbook/find-tables.ts';
import { randomLedger } from '../domain/trace/random-ledger.ts';
import { applyChange } from '../support/apply-change.ts';
import { FIRST_DAY, LAST_DAY } from '../support/arbitrary-book.ts';
import { pourOf, pourWish, workedWorkshop } from '../support/arbitrary-pours.ts';
import { itemsOf, post, readTables, sure, undo } from '../support/ledger-of.ts';
import { table, tableData, type Tables } from '../support/small-book.ts';

/** The day on the clock of whoever takes back: the batch may be a partner's, dated later than that. */
const anyToday = fc.integer({ min: FIRST_DAY, max: LAST_DAY });

/** Days on which stock is looked at, with the one before and after all that happens. */
const days = Array.from({ length: 42 }, (_, at) => FIRST_DAY - 1 + at * 10);

const sales = table('Sale | Sold on | Design | Bars | Price each | Fair | Fees');

function expectNoneEarly(book: Book, moves: readonly MoveLine[], today: number): void {
  const whenOf = new Map(book.ledger.moves.map(({ entry, when }) => [nameKey(entry), when]));
  for (const { entry, reason, note, when } of moves) {
    if (reason !== 'reversed') continue;
    expect(when, entry).toBe(Math.max(today, whenOf.get(nameKey(note)) ?? Infinity));
  }
}

/** On each day an item's stock is what it was with what was taken back, or what it was without. */
function expectEitherWay(taken: Tables, withIt: Tables, without: Tables): void {
  const [undone, before, never] = [taken, withIt, without].map(readTables) as [Book, Book, Book];
  for (const item of itemsOf(before)) {
    for (const day of days) {
      const ways = [before, never].map((book) => onHand(book, item, day).toString());
      expect(ways, `${item.name} on ${day}`).toContain(onHand(undone, item, day).toString());
    }
    expect(onHand(undone, item, LAST_DAY).toString()).toBe(
      onHand(never, item, LAST_DAY).toString(),
    );
  }
}

describe('what takes a move back', () => {
  it('is dated no earlier than a batch’s move, so that stock is never taken twice', () => {
    let early = 0;
    fc.assert(
      fc.property(workedWorkshop, pourWish, anyToday, (tables, wish, today) => {
        const poured = post(tables, pourOf(wish, 'X'), LAST_DAY)?.after;
        if (poured === undefined) return;
        const book = readTables(poured);
        const undone = undoBatch(book, 'X', today, '');
        if (!undone.ok) throw new Error(undone.failure.sentence);
        expectNoneEarly(book, undone.value.moves, today);
        if (today < wish.day) early += 1;
        expectEitherWay(undo(poured, 'X', today) ?? tables, poured, tables);
      }),
      { numRuns: 150 },
    );
    expect(early).toBeGreaterThan(5);
  });

  it('is dated no earlier than a sale’s move', () => {
    let early = 0;
    fc.assert(
      fc.property(workedWorkshop, anyToday, anyToday, (worked, soldOn, today) => {
        const tables = { ...worked, Sales: sales };
        const book = readTables(tables);
        const [made] = [...book.designs.values()].filter((design) =>
          book.ledger.moves.some(({ item }) => nameKey(item.name) === nameKey(design.name)),
        );
        if (made === undefined) return;
        const posted = postSales(
          book,
          {
            id: 'S',
            soldOn,
            fair: '',
            lines: [{ design: made, bars: 1, priceEach: exact(9) }],
            fees: exact(0),
            by: '',
          },
          LAST_DAY,
        );
        if (!posted.ok) return;
        const names = findTables(tableData(tables));
        const sold = applyChange(tables, sure(changeForSales(posted.value, names)));
        const soldBook = readTables(sold);
        const back = sure(undoSales(soldBook, 'S', today, ''));
        expectNoneEarly(soldBook, back.moves, today);
        if (today < soldOn) early += 1;
        expectEitherWay(applyChange(sold, sure(changeForSales(back, names))), sold, tables);
      }),
      { numRuns: 150 },
    );
    expect(early).toBeGreaterThan(5);
  });

  it('is dated no earlier by a repair of the health check', () => {
    let reversals = 0;
    fc.assert(
      fc.property(randomLedger, fc.integer({ min: -3, max: 30 }), (ledger, from) => {
        const book = readTables({
          ...ledger.tables,
          Batches: (ledger.tables['Batches'] ?? []).slice(0, 1),
        });
        const today = Math.min(...book.ledger.moves.map(({ when }) => when)) + from;
        for (const { repair } of healthCheck(book, today, 'Ann')) {
          const moves = repair?.moves ?? [];
          reversals += moves.filter(({ reason }) => reason === 'reversed').length;
          expectNoneEarly(book, moves, today);
        }
      }),
      { numRuns: 100, seed: 7 },
    );
    expect(reversals).toBeGreaterThan(50);
  });
});

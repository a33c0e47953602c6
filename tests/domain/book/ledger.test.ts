import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Move } from '../../../src/domain/book/book.ts';
import { findItem } from '../../../src/domain/book/find.ts';
import { nameKeysIn, someMoves, valueIn } from '../../../src/domain/book/ledger.ts';
import { moveReasons } from '../../../src/domain/book/words.ts';
import { ledgerOf, readTables, sure } from '../../support/ledger-of.ts';
import { workshop } from '../../support/small-book.ts';

const book = readTables(workshop);
const items = ['Clear base', 'Slate leftover', 'Teal × Tiles', 'Tide Pool'].map((name) =>
  sure(findItem(book, name)),
);

const moves: fc.Arbitrary<Move[]> = fc
  .array(
    fc.record({
      when: fc.integer({ min: 45_000, max: 45_010 }),
      reason: fc.constantFrom(...moveReasons),
      item: fc.constantFrom(...items),
      quantity: fc.integer({ min: -500, max: 500 }).map((n) => n / 8),
      lot: fc.constantFrom('', 'C1', 'c1', 'C 2'),
      value: fc.option(fc.constantFrom(0, -1.25, 7), { nil: undefined }),
      batch: fc.constantFrom('', 'T1', 'T2'),
      by: fc.constantFrom('me', ''),
      note: fc.string({ maxLength: 5 }),
    }),
    { maxLength: 30 },
  )
  .map((drawn) => drawn.map((move, at) => ({ ...move, entry: `E${at}` }) as Move));

describe('a ledger kept by columns', () => {
  it('gives each move back as it was, asked for by row or all at once', () => {
    fc.assert(
      fc.property(moves, (all) => {
        const ledger = ledgerOf(all);
        expect(ledger).toHaveLength(all.length);
        expect(all.map((_, row) => ledger.move(row))).toEqual(all);
        expect(ledger.moves).toEqual(all);
        // Once made they are kept.
        for (const [row, move] of ledger.moves.entries()) expect(ledger.move(row)).toBe(move);
      }),
    );
  });

  it('of some of its moves holds just those, in their order', () => {
    fc.assert(
      fc.property(moves, fc.nat({ max: 3 }), (all, rest) => {
        const isKept = (row: number): boolean => row % 4 !== rest;
        const some = someMoves(ledgerOf(all), isKept);
        expect(some.moves).toEqual(all.filter((_, row) => isKept(row)));
        expect(some.length).toBe(some.moves.length);
      }),
    );
  });

  it('keeps the prints of the rows that stay', () => {
    fc.assert(
      fc.property(moves, (all) => {
        const ledger = ledgerOf(all);
        const kept = [...all.keys()].filter((row) => row % 3 === 0);
        const { prints } = someMoves(ledger, (row) => row % 3 === 0);
        expect([...prints.high]).toEqual(kept.map((row) => ledger.prints.high[row]));
        expect([...prints.low]).toEqual(kept.map((row) => ledger.prints.low[row]));
      }),
    );
  });

  it('tells values and their names by row', () => {
    const column = { values: ['Teal', ' SLATE '], places: Int32Array.of(1, 0, 1) };
    expect([0, 1, 2].map((row) => valueIn(column, row))).toEqual([' SLATE ', 'Teal', ' SLATE ']);
    expect(nameKeysIn(column.values)).toEqual(['teal', 'slate']);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readDay } from '../../../src/domain/kernel/day.ts';
import { indexOf } from '../../../src/domain/stock/ledger-index.ts';
import { stockAt } from '../../../src/domain/stock/valuation.ts';
import { walkLayers } from '../../../src/domain/trace/layer-takings.ts';
import { recallOf } from '../../../src/domain/trace/recall.ts';
import { table, withSetting } from '../../support/small-book.ts';
import { bookOf, sound } from '../label/label-book.ts';
import { batchesOf, linesOf, lotsOf } from './ask.ts';
import { randomLedger } from './random-ledger.ts';

const LATE = readDay('2030-01-01') ?? 0;
const RUNS = { numRuns: 400 };

describe('trace against a brute-force walk of tokens', () => {
  it('finds every batch a lot went into, and no other', () => {
    fc.assert(
      fc.property(randomLedger, ({ tables, lots, lotsIn }) => {
        const book = bookOf(tables);
        for (const lot of lots) {
          const expected = [...lotsIn].filter(([, held]) => held.has(lot)).map(([batch]) => batch);
          expect(batchesOf(book, lot), lot).toEqual(expected.sort());
        }
      }),
      RUNS,
    );
  });

  it('finds every lot in a batch, and no other', () => {
    fc.assert(
      fc.property(randomLedger, ({ tables, lots, lotsIn }) => {
        const book = bookOf(tables);
        for (const [batch, held] of lotsIn) {
          expect(lotsOf(book, batch, lots), batch).toEqual([...held].sort());
        }
      }),
      RUNS,
    );
  });

  it('counts what each batch took straight from each lot', () => {
    fc.assert(
      fc.property(randomLedger, ({ tables, lots, taken }) => {
        const book = bookOf(tables);
        const found = new Map<string, number>();
        for (const lot of lots) {
          for (const line of linesOf(book, lot)) {
            if (line.lot === lot) found.set(`${line.batch} ${lot}`, line.quantity.toNumber());
          }
        }
        const expected = [...taken].filter(([key]) => !key.endsWith(' '));
        expect([...found].sort()).toEqual(expected.sort());
      }),
      RUNS,
    );
  });

  it('counts the bars of a recalled batch on the shelf and sold', () => {
    fc.assert(
      fc.property(randomLedger, ({ tables, lots, barsLeft, barsSold }) => {
        const book = bookOf(tables);
        for (const lot of lots) {
          for (const batch of sound(recallOf(book, lot, LATE)).batches) {
            expect(batch.barsOnHand.toNumber()).toBe(barsLeft.get(batch.batch) ?? 0);
            expect(batch.barsSold.toNumber()).toBe(barsSold.get(batch.batch) ?? 0);
          }
        }
      }),
      RUNS,
    );
  });

  it('leaves the same layers on every shelf as valuation does', () => {
    fc.assert(
      fc.property(randomLedger, ({ tables }) => {
        const book = bookOf(tables);
        for (const { moves } of indexOf(book).values()) {
          const item = moves[0]?.item;
          if (item === undefined) continue;
          const plain = (layers: ReturnType<typeof walkLayers>['remaining']) =>
            layers.map(({ lot, quantity }) => [lot, quantity.toString()]);
          expect(plain(walkLayers(book, item).remaining)).toEqual(
            plain(stockAt(book, item, LATE).filled),
          );
        }
      }),
      RUNS,
    );
  });

  it('does not depend on the order of rows, nor on the Valuation', () => {
    fc.assert(
      fc.property(randomLedger, fc.infiniteStream(fc.double({ noNaN: true })), (ledger, keys) => {
        const [headers = [], ...rows] = ledger.tables['LedgerLines'] ?? [];
        const shuffled = rows
          .map((row) => ({ row, key: Number(keys.next().value) }))
          .sort((a, b) => a.key - b.key)
          .map(({ row }) => row);
        const other = withSetting(
          {
            Settings: table('Setting | Value'),
            ...ledger.tables,
            LedgerLines: [headers, ...shuffled],
          },
          'Valuation',
          'Average',
        );
        const [book, again] = [bookOf(ledger.tables), bookOf(other)];
        for (const name of [...ledger.lots, ...ledger.lotsIn.keys()])
          expect(linesOf(again, name)).toEqual(linesOf(book, name));
      }),
      { numRuns: 60 },
    );
  });
});

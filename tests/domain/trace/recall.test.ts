import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findDesign, itemOfBars } from '../../../src/domain/book/find.ts';
import { readDay } from '../../../src/domain/kernel/day.ts';
import { sum } from '../../../src/domain/kernel/exact.ts';
import { nameKey } from '../../../src/domain/kernel/names.ts';
import { onHand } from '../../../src/domain/stock/on-hand.ts';
import { barsByBatch, NO_BATCH } from '../../../src/domain/trace/bars-by-batch.ts';
import { recallOf } from '../../../src/domain/trace/recall.ts';
import { withRows } from '../../support/small-book.ts';
import { bookOf, sound } from '../label/label-book.ts';
import { chain } from './chain.ts';
import { randomLedger } from './random-ledger.ts';

const LATE = readDay('2030-01-01') ?? 0;

describe('recallOf', () => {
  const book = bookOf(chain);
  const recall = sound(recallOf(book, 'L1', LATE));

  it('lists each batch with its bars on the shelf, sold and gone, oldest bars sold first', () => {
    expect(
      recall.batches.map((batch) => [
        batch.batch,
        batch.certainty,
        batch.barsMade.toNumber(),
        batch.barsOnHand.toNumber(),
        batch.barsSold.toNumber(),
        batch.barsGone.toNumber(),
      ]),
    ).toEqual([
      ['B1', 'direct', 12, 0, 12, 0],
      ['B2', 'by recipe', 6, 5, 0, 1],
      ['B3', 'by recipe', 5, 4, 1, 0],
    ]);
    expect(recall.batches[0]?.sales.map(({ bars, note }) => [bars.toNumber(), note])).toEqual([
      [7, 'Harbour Fair'],
      [5, 'By post'],
    ]);
    expect(recall.lot?.onHand.toNumber()).toBe(100);
  });

  it('tells apart what is only possible: no Teal drops are in a Clear tint leftover', () => {
    const drops = sound(recallOf(book, 'D1', LATE));
    expect(drops.batches.map(({ batch, certainty }) => [batch, certainty])).toEqual([
      ['B1', 'direct'],
      ['B2', 'possible'],
      ['B3', 'possible'],
    ]);
  });

  it('lists soap of those batches on the shelf, and uses that nobody can place', () => {
    const more = sound(
      recallOf(
        bookOf(
          withRows(
            chain,
            'LedgerLines',
            ['E1', '2024-03-01', 'left over', 'Teal leftover', 9, 'B1', '', 'B1'],
            ['E2', '2024-03-01', 'counted', 'Clear tint leftover', 7, '', '', ''],
            ['E3', '2024-03-02', 'used', 'Clear tint leftover', -7, '', '', 'B4'],
            ['E4', '2024-03-02', 'used', 'Clear base', -3, 'L1', '', ''],
          ),
        ),
        'L1',
        LATE,
      ),
    );
    expect(
      more.soapOnHand.map(({ item, batch, onHand }) => [item.name, batch, onHand.toNumber()]),
    ).toEqual([['Teal leftover', 'B1', 9]]);
    expect(more.doubtful.map(({ move }) => move.entry)).toEqual(['E3']);
    expect(more.lot?.gone.toNumber()).toBe(3);
  });

  it('counts as gone what was wasted, counted off or used without a batch, by the day asked', () => {
    const lost = withRows(
      chain,
      'LedgerLines',
      ['E1', '2024-03-01', 'wasted', 'Clear base', -30, 'L1', '', ''],
      ['E2', '2024-03-02', 'counted', 'Clear base', -20, 'L1', '', ''],
      ['E3', '2024-03-03', 'used', 'Clear base', -4, 'L1', '', ''],
    );
    const goneOn = (date: string): number | undefined =>
      sound(recallOf(bookOf(lost), 'L1', readDay(date) ?? 0)).lot?.gone.toNumber();
    expect(['2024-02-28', '2024-03-02', '2024-03-03'].map(goneOn)).toEqual([0, 50, 54]);
  });

  it.each([
    ['2024-01-31', []],
    ['2024-02-01', ['B1']],
    ['2024-02-02', ['B1', 'B2']],
  ])('lists the batches that had it by %s', (date, batches) => {
    const found = sound(recallOf(book, 'L1', readDay(date) ?? 0));
    expect(found.batches.map(({ batch }) => batch)).toEqual(batches);
  });

  it('follows a batch in the same way: itself, what took of it, and what took of those', () => {
    const found = sound(recallOf(book, 'B1', LATE));
    expect(found.lot).toBeUndefined();
    expect(
      found.batches.map(({ batch, certainty, barsMade, barsOnHand, barsSold }) => [
        batch,
        certainty,
        ...[barsMade, barsOnHand, barsSold].map((bars) => bars.toNumber()),
      ]),
    ).toEqual([
      ['B1', 'direct', 12, 0, 12],
      ['B2', 'direct', 6, 5, 0],
      ['B3', 'possible', 5, 4, 1],
    ]);
  });
});

describe('barsByBatch', () => {
  it('shares what is on hand among the batches, to the bar, whatever was written by hand', () => {
    fc.assert(
      fc.property(randomLedger, fc.integer({ min: 0, max: 26 }), ({ tables, barsLeft }, after) => {
        const book = bookOf(tables);
        const design = sound(findDesign(book, 'Tide Pool'));
        const asOf = (readDay('2024-01-01') ?? 0) + after;
        const bars = barsByBatch(book, design, asOf);
        expect(sum([...bars.values()]).toString()).toBe(
          onHand(book, itemOfBars(design), asOf).toString(),
        );
        const late = barsByBatch(book, design, LATE);
        for (const batch of book.batches.values()) {
          expect(late.get(nameKey(batch.batch))?.toNumber() ?? 0).toBe(
            barsLeft.get(batch.batch) ?? 0,
          );
        }
      }),
      { numRuns: 300 },
    );
  });

  it('knows the batch by its own move where Lot says another name, and owns up to none', () => {
    const hand = withRows(
      chain,
      'LedgerLines',
      ['E1', '2024-03-01', 'made', 'Tide Pool', 8, 'Top shelf', '', 'B4'],
      ['E2', '2024-03-02', 'counted', 'Tide Pool', 2, '', '', ''],
      ['E3', '2024-03-03', 'sold', 'Tide Pool', -3, 'Top shelf', '', ''],
    );
    const book = bookOf(hand);
    const design = sound(findDesign(book, 'Tide Pool'));
    const bars = barsByBatch(book, design, LATE);
    expect([bars.get('b4')?.toNumber(), bars.get(NO_BATCH)?.toNumber()]).toEqual([5, 2]);
  });
});

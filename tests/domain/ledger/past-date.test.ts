import { describe, expect, it } from 'vitest';
import { postBatch } from '../../../src/domain/ledger/post-batch.ts';
import type { PostBatchAnswer } from '../../../src/domain/ledger/settle.ts';
import { isoDate } from '../../../src/domain/kernel/day.ts';
import { readTables, sure } from '../../support/ledger-of.ts';
import { day, pourOf } from '../../support/pour-of.ts';
import { type Tables, withCell, withSetting, workshop } from '../../support/small-book.ts';

/** Twelve Tide Pool on a day; the workshop's C2 lasts to 2025-03-31, C1 to 2025-06-30, O1 to 2024-12-31. */
const pourOn = (
  iso: string,
  tables: Tables = workshop,
  off: readonly string[] = [],
): PostBatchAnswer => {
  const book = readTables(tables);
  const differs = { poured: day(iso), countIsOff: new Set(off) };
  return sure(postBatch(book, pourOf('Tide Pool', 12, differs)(book), day(iso)));
};
const named = ({ pastDate }: PostBatchAnswer) =>
  pastDate.map(({ lot, bestBefore }) => [lot, isoDate(bestBefore ?? 0)]);

describe('a pour from lots past their best before', () => {
  it('is recorded with the earliest first, as contract §4 says, and names each', () => {
    const result = pourOn('2026-01-01');
    expect(result.kind).toBe('ready');
    expect(named(result)).toEqual(
      expect.arrayContaining([
        ['C2', '2025-03-31'],
        ['O1', '2024-12-31'],
      ]),
    );
    expect(result.pastDate).toHaveLength(2);
  });

  it.each([
    ['its last day, which is good still', '2024-12-31', []],
    ['the day after', '2025-01-01', [['O1', '2024-12-31']]],
  ])('names a lot from the day after its date: %s', (_, poured, expected) => {
    expect(named(pourOn(poured))).toEqual(expected);
  });

  it('names it just as well under Average, though the value is no lot’s', () => {
    expect(
      pourOn('2026-01-01', withSetting(workshop, 'Valuation', 'Average')).pastDate,
    ).toHaveLength(2);
  });

  // 12 bars take 12 × 2 % of 57.5 g of oil, 13.8 g or 16.2 ml; 4 of them are here.
  const littleOil = withCell(workshop, 'Lots', 6, 'Quantity', 4);

  it('names the lots of what is there, where stock is short of something else', () => {
    const result = pourOn('2026-01-01', littleOil);
    expect(result.kind).toBe('short');
    expect(named(result)).toEqual([['C2', '2025-03-31']]);
  });

  it('names a lot that a count tops up', () => {
    const result = pourOn('2026-01-01', littleOil, ['Orange oil']);
    expect(result.kind).toBe('ready');
    expect(named(result)).toContainEqual(['O1', '2024-12-31']);
  });
});

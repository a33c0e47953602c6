import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sum, zero } from '../../../src/domain/kernel/exact.ts';
import type { Pour } from '../../../src/domain/ledger/pour.ts';
import { postBatch } from '../../../src/domain/ledger/post-batch.ts';
import { lineKey, ADDED } from '../../../src/domain/ledger/pour.ts';
import { exact } from '../../../src/domain/kernel/exact.ts';
import { onHand } from '../../../src/domain/stock/on-hand.ts';
import { findItem } from '../../../src/domain/book/find.ts';
import { post, readTables, sure } from '../../support/ledger-of.ts';
import { day, pourOf } from '../../support/pour-of.ts';
import { type Tables, withoutColumn, withRows, workshop } from '../../support/small-book.ts';

const poured = day('2024-03-01');
const withLost: Tables = {
  ...workshop,
  Batches: (workshop['Batches'] ?? []).map((headers) => headers.toSpliced(6, 0, 'Lost')),
};

const used = (tables: Tables, item: string): string => {
  const book = readTables(tables);
  const moves = book.ledger.moves.filter((move) => move.item.name === item && move.quantity < 0);
  return sum(moves.map(({ quantity }) => exact(quantity)))
    .neg()
    .toString();
};

const pourWith = (differs: Partial<Pour>) =>
  post(withLost, pourOf('Tide Pool', 15, differs), poured);

const refusal = (differs: Partial<Pour>): string => {
  const book = readTables(withLost);
  const result = postBatch(book, pourOf('Tide Pool', 15, differs)(book), poured);
  return result.ok ? '' : result.failure.sentence;
};

describe('bars that were lost', () => {
  it('take no packaging: 15 started, 12 good, 1 second are 13 boxes, and 2 stay in stock', () => {
    const after = pourWith({ good: 12, seconds: 1, lost: 2 })?.after ?? {};
    expect(used(after, 'Box')).toBe('13');
    const box = (tables: Tables) => {
      const book = readTables(tables);
      return onHand(book, sure(findItem(book, 'Box')), poured);
    };
    expect(box(withLost).minus(box(after)).toString()).toBe('13');
    // What is poured into a bar is in it, lost or not: 0.5 ml of glycerin is painted on each of 15.
    expect(used(after, 'Glycerin')).toBe('7.5');
  });

  it('stand in the batch’s line, where the table has the column', () => {
    const after = pourWith({ good: 12, seconds: 1, lost: 2 })?.after ?? {};
    expect(readTables(after).batches.get('b1')).toMatchObject({ good: 12, seconds: 1, lost: 2 });
    const older = post(
      withoutColumn(withLost, 'Batches', 'Lost'),
      pourOf('Tide Pool', 15, { good: 12, seconds: 1, lost: 2 }),
      poured,
    );
    expect(used(older?.after ?? {}, 'Box')).toBe('13');
    expect(readTables(older?.after ?? {}).batches.get('b1')?.lost).toBeUndefined();
  });

  it('are never guessed: each bar started is told of, and no more', () => {
    expect(refusal({ good: 12, seconds: 1, lost: 0 })).toBe(
      '15 bars were started, and 2 are not told of yet. Type them under Good bars, Seconds or Lost.',
    );
    expect(refusal({ good: 12, seconds: 1, lost: 3 })).toBe(
      '12 good, 1 second and 3 lost are more than the 15 bars started. Mend the numbers, or start more bars.',
    );
    expect(refusal({ good: 12, seconds: 1, lost: 1.5 })).toBe(
      'Lost is 1.5. Give a whole number, 0 or more.',
    );
  });

  it('leave the maker’s own count of boxes alone', () => {
    const weighed = new Map([[lineKey(ADDED, 'Box'), exact(14)]]);
    const after = pourWith({ good: 12, seconds: 1, lost: 2, weighed })?.after ?? {};
    expect(used(after, 'Box')).toBe('14');
  });

  it('change nothing of value out and value in, however many', () => {
    fc.assert(
      fc.property(fc.nat(15), fc.nat(15), (a, b) => {
        const [good, seconds] = [Math.min(a, b), Math.abs(a - b)];
        const posted = pourWith({ good, seconds, lost: 15 - good - seconds });
        const { moves = [], writtenOff = zero } = posted?.posting ?? {};
        expect(moves.length).toBeGreaterThan(0);
        expect(sum([...moves.map(({ value }) => value), writtenOff]).toString()).toBe('0');
        expect(used(posted?.after ?? {}, 'Box')).toBe(String(good + seconds));
      }),
      { numRuns: 60 },
    );
  });
});

describe('a line of Batches', () => {
  const line = (good: number | '', seconds: number | '', lost: number | '') =>
    withRows(withLost, 'Batches', ['B0', '2024-02-01', 'Tide Pool', 15, good, seconds, lost]);

  it.each([
    ['is told in full', 12, 1, 2],
    ['is older than Lost', 12, 1, ''],
    ['is older, and its blank came as 0', 12, 1, 0],
    ['lost them all', 0, '', 15],
  ] as const)('that %s is read', (_, good, seconds, lost) => {
    expect(readTables(line(good, seconds, lost)).batches.get('b0')?.bars).toBe(15);
  });

  it('whose bars don’t add up is refused with what to type', () => {
    expect(() => readTables(line(12, 1, 3))).toThrow(
      'Batches, row 1, Lost is 3, but Good 12, Seconds 1 and Lost 3 are 16 and Bars is 15. Type 2, or mend Good, Seconds or Bars',
    );
  });
});

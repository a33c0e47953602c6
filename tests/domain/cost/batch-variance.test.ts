import { describe, expect, it } from 'vitest';
import { nameKey } from '../../../src/domain/kernel/names.ts';
import { Exact, sum } from '../../../src/domain/kernel/exact.ts';
import { batchVariance } from '../../../src/domain/cost/batch-variance.ts';
import { lineKey, ADDED } from '../../../src/domain/ledger/pour.ts';
import { post, readTables, sure } from '../../support/ledger-of.ts';
import { day, pourOf } from '../../support/pour-of.ts';
import { withRows, workshop } from '../../support/small-book.ts';

const TODAY = day('2024-03-01');

function varianceOf(weighed: readonly (readonly [string, string])[]) {
  const pour = pourOf('Tide Pool', 12, {
    weighed: new Map(weighed.map(([key, amount]) => [key, new Exact(amount)])),
  });
  const book = readTables(post(workshop, pour, TODAY)?.after ?? workshop);
  const batch = book.batches.get(nameKey('B1'));
  if (batch === undefined) throw new Error('The pour was not posted.');
  return sure(batchVariance(book, batch));
}

describe('batchVariance', () => {
  it('finds no difference in quantity where all went as planned', () => {
    for (const line of varianceOf([]))
      expect(line.quantityDifference.abs().toNumber()).toBeLessThan(0.001);
  });

  it('prices what was used too much at the standard cost', () => {
    // Two boxes more than twelve, 0.40 each (20 for 50), bought at the standard price.
    const box = varianceOf([[lineKey(ADDED, 'Box'), '14']]).find(({ item }) => item.name === 'Box');
    expect(box?.quantityDifference.toString()).toBe('0.8');
    expect(box?.priceDifference.toString()).toBe('0');
  });

  it('puts a lot dearer or cheaper than the pack price down to price', () => {
    // White base: 45 for 5000 g is the standard; the lot was 18 for 2000 g, the same 0.009.
    // Clear base comes from C2 first (best before): 27 for 3000 g = 0.009 against 40 for 5000 g = 0.008.
    const clear = varianceOf([]).find(({ item }) => item.name === 'Clear base');
    const expected = clear?.used.times('0.001') ?? new Exact(0);
    expect(clear?.priceDifference.minus(expected).abs().toNumber()).toBeLessThan(0.006);
  });

  it('sums to used less planned cost, exactly', () => {
    const lines = varianceOf([[lineKey('Slate', 'Clear base'), '400']]);
    for (const line of lines) {
      const whole = line.usedCost.minus(line.plannedCost);
      expect(sum([line.quantityDifference, line.priceDifference]).eq(whole)).toBe(true);
    }
  });

  it('has nothing to say of a batch without moves', () => {
    const tables = withRows(workshop, 'Batches', [
      'B9',
      '2024-03-01',
      'Tide Pool',
      12,
      12,
      '',
      '',
      '',
      '',
      '',
      '',
      '',
      '',
    ]);
    const book = readTables(tables);
    const batch = book.batches.get(nameKey('B9'));
    const result = batch && batchVariance(book, batch);
    expect(result?.ok === false && result.failure.kind).toBe('not yet');
  });
});

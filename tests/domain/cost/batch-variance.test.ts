import { describe, expect, it } from 'vitest';
import { nameKey } from '../../../src/domain/kernel/names.ts';
import { Exact, sum } from '../../../src/domain/kernel/exact.ts';
import { batchVariance } from '../../../src/domain/cost/batch-variance.ts';
import { lineKey, ADDED } from '../../../src/domain/ledger/pour.ts';
import { post, readTables, sure } from '../../support/ledger-of.ts';
import { day, pourOf } from '../../support/pour-of.ts';
import { type Tables, withRows, withSetting, workshop } from '../../support/small-book.ts';

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

  /** 100 g of White base used by hand, without a Value. */
  const usedByHand = (lot: string, more: Tables = workshop) => {
    const used = ['H1', '2024-03-01', 'used', 'White base', -100, lot, '', 'B9', '', ''];
    const batch = ['B9', '2024-03-01', 'Plain Bar', 2, 2, '', '', '', '', '', '', '', ''];
    const book = readTables(withRows(withRows(more, 'LedgerLines', used), 'Batches', batch));
    const found = book.batches.get('b9');
    if (found === undefined) throw new Error('There is no batch B9.');
    return batchVariance(book, found);
  };

  it('values what was used without a Value at what its lot cost', () => {
    // W1 is 18 for 2000 g: 100 g × 0.009 = 0.90. Two bars of 50 g at 45 for 5000 g are planned at 0.90.
    const [white] = sure(usedByHand('w1'));
    expect([white?.used.toNumber(), white?.usedCost.toNumber()]).toEqual([100, 0.9]);
    expect(white?.priceDifference.toNumber()).toBe(0);
  });

  it('values it at the average where that is the valuation', () => {
    // W2 is 54 for 2000 g: (18 + 54) ÷ 4000 g = 0.018 a gram.
    const dearer = withRows(withSetting(workshop, 'Valuation', 'Average'), 'Lots', [
      'W2',
      'White base',
      '2024-02-05',
      2000,
      54,
      0,
      '',
      '',
    ]);
    expect(sure(usedByHand('', dearer))[0]?.usedCost.toNumber()).toBe(1.8);
  });

  it('names the entry where neither a Value nor a lot says what it was worth', () => {
    const result = usedByHand('');
    expect(result.ok ? '' : result.failure.sentence).toMatch(
      /Entry H1 in LedgerLines used White base without a Value/,
    );
  });
});

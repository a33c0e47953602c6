import { describe, expect, it } from 'vitest';
import { fairResult } from '../../../src/domain/sell/fair-result.ts';
import { nameKey } from '../../../src/domain/kernel/names.ts';
import { readTables, sure } from '../../support/ledger-of.ts';
import {
  type Tables,
  withCell,
  withoutColumn,
  withRows,
  withSetting,
  workshop,
} from '../../support/small-book.ts';

// Worked by hand: 20 bars at 9.50 and 4 at 8.00 of batches that cost 5.00 (12 good) and 5.50 (4 good).
const batch = (id: string, good: number, cost: number, state = 'posted') =>
  [id, '2024-11-01', 'Tide Pool', good, good, 0, '', '', cost, '', state, '', ''] as const;
const withBatches = withRows(
  workshop,
  'Batches',
  batch('B1', 12, 5),
  batch('B2', 4, 5.5),
  batch('B3', 9, 99, 'undone'),
);
const sold = withRows(
  withBatches,
  'Sales',
  ['S1', '2024-12-06', 'Tide Pool', 20, 9.5, 'Harbour Fair', 3.2],
  ['S2', '2024-12-07', 'Tide Pool', 4, 8, 'harbour fair', 0.8],
  ['S3', '2024-12-07', 'Tide Pool', 9, 8, '', 0.8],
);

function result(tables: Tables) {
  const book = readTables(tables);
  const fair = book.fairs.get(nameKey('Harbour Fair'));
  if (fair === undefined) throw new Error('No fair.');
  const { takings, tax, fees, costOfBars, stallAndTravel, profit, perHour, barsToBreakEven } = sure(
    fairResult(book, fair),
  );
  return [takings, tax, fees, costOfBars, stallAndTravel, profit, perHour, barsToBreakEven].map(
    (amount) => amount?.toNumber(),
  );
}

describe('fairResult', () => {
  it('adds up one fair, at the full cost its batches recorded', () => {
    // Cost (12 × 5 + 4 × 5.5) ÷ 16 = 5.125; 24 bars 123. Takings 222, fees 4, stall and travel 52:
    // profit 43, 5.375 an hour. A bar brings in 218 ÷ 24 − 5.125 = 3.9583: 52 ÷ 3.9583 = 13.1, so 14.
    expect(result(sold)).toEqual([222, 0, 4, 123, 52, 43, 5.375, 14]);
  });

  it('takes tax out of prices that include it', () => {
    const taxed = withSetting(withSetting(sold, 'Sales tax %', 20), 'Prices include tax', 'yes');
    // 190 ÷ 6 = 31.67 and 32 ÷ 6 = 5.33.
    expect(result(taxed).slice(0, 2)).toEqual([222, 37]);
    expect(result(taxed)[5]).toBeCloseTo(43 - 37, 10);
  });

  it('puts tax on top of prices without it, which leaves profit alone', () => {
    const taxed = withSetting(sold, 'Sales tax %', 10);
    expect(result(taxed).slice(0, 2)).toEqual([244.2, 22.2]);
    expect(result(taxed)[5]).toBe(43);
  });

  it('counts a sale taken back as not made', () => {
    const back = withRows(sold, 'Sales', [
      'S2.R',
      '2024-12-07',
      'Tide Pool',
      -4,
      8,
      'Harbour Fair',
      -0.8,
    ]);
    expect(result(back).slice(0, 4)).toEqual([190, 0, 3.2, 102.5]);
  });

  it('has no figure per hour or to break even where there is nothing to divide by', () => {
    const idle = withCell(withBatches, 'Fairs', 1, 'Hours', '');
    expect(result(idle)).toEqual([0, 0, 0, 0, 52, -52, undefined, undefined]);
  });

  const oneSold = (tables: Tables) =>
    withRows(tables, 'Sales', ['S1', '2024-03-01', 'Tide Pool', 1, 9, 'Harbour Fair', 0]);

  it.each(['2024-03-01', '2024-03-01T15:00'])(
    'knows the cost of a batch poured on %s',
    (poured) => {
      const costly = ['X1', poured, 'Tide Pool', 2, 2, 0, '', '', 7.77, '', 'posted', '', ''];
      expect(result(oneSold(withRows(workshop, 'Batches', costly)))[3]).toBe(7.77);
    },
  );

  it('leaves out a batch whose moves were taken back, where Batches has no State', () => {
    const poured = (id: string, cost: number) =>
      [id, '2024-02-01', 'Tide Pool', 2, 2, 0, '', '', cost, '', '', '', ''] as const;
    const tables = withRows(
      withRows(workshop, 'Batches', poured('X1', 9), poured('X2', 5)),
      'LedgerLines',
      ['X1.01', '2024-02-01', 'made', 'Tide Pool', 2, 'X1', 18, 'X1', '', ''],
      ['X1.01.R', '2024-02-02', 'reversed', 'Tide Pool', -2, 'X1', -18, 'X1', '', 'X1.01'],
    );
    // Both would make it (9 + 5) ÷ 2 = 7.
    expect(result(oneSold(withoutColumn(tables, 'Batches', 'State')))[3]).toBe(5);
  });
});

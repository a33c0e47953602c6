import { describe, expect, it } from 'vitest';
import { loadFunctions } from '../support/worksheet-functions.ts';
import { ranges, type Range, table } from '../support/small-book.ts';

const call = await loadFunctions();

/** A material of two lots, 100 g for 100 and 100 g for 200, under a valuation, and some moves of it. */
function bookOf(valuation: string, ...moves: Range): unknown {
  return call(
    'BOOK',
    ...ranges({
      Settings: table('Setting | Value', ['Valuation', valuation]),
      Materials: table(
        'Material | Kind | Unit | Pack size | Pack price',
        ['Clay', 'extra', 'g', 100, 700],
        ['Silt', 'extra', 'g', 100, 700],
        ['Clay base', 'base', 'g', '', ''],
      ),
      Lots: table(
        'Lot | Material | Received | Quantity | Paid',
        ['A', 'Clay', '2024-01-01', 100, 100],
        ['B', 'Clay', '2024-01-02', 100, 200],
      ),
      Designs: table('Design', ['Bar']),
      LedgerLines: table(
        'Entry | When | Reason | Material | Quantity | Lot | Value | Batch',
        ...moves,
      ),
    }),
  );
}

describe('a count that finds more of a lot (contract §4)', () => {
  const counted: Range = [
    ['E1', '2024-02-01', 'counted', 'Clay', -50, 'A', ''],
    ['E2', '2024-02-02', 'counted', 'Clay', 50, 'A', 50],
  ];

  it.each([
    ['FIFO', 300],
    // (300 − 50 × 1.50) + 50 × 1.50: the average stays as it is.
    ['Average', 300],
  ])('under %s enters at that lot’s cost or the moving average', (valuation, value) => {
    expect(call('STOCKVALUE', 'Clay', bookOf(valuation, ...counted))).toBe(value);
  });

  it('under Average leaves the unit cost as it was, whatever its Value says', () => {
    const book = bookOf('Average', ['E1', '2024-02-02', 'counted', 'Clay', 100, 'A', 1]);
    expect(call('UNITCOST', 'Clay', book)).toBe(1.5);
  });

  it('under FIFO costs what the lot did, whatever its Value says', () => {
    const book = bookOf('FIFO', ['E1', '2024-02-02', 'counted', 'Clay', 100, 'A', 1]);
    expect(call('STOCKVALUE', 'Clay', book)).toBe(400);
  });

  it.each(['FIFO', 'Average'])('never sets what an empty shelf costs (%s)', (valuation) => {
    const empty: Range = [
      ['E1', '2024-02-01', 'wasted', 'Clay', -200, '', ''],
      ['E2', '2024-02-02', 'counted', 'Clay', 5, '', 0],
      ['E3', '2024-02-03', 'wasted', 'Clay', -5, '', ''],
    ];
    expect(call('UNITCOST', 'Clay', bookOf(valuation, ...empty))).toBe(2);
    // Of what was never bought, the price of a pack.
    const silt: Range = [
      ['E1', '2024-02-02', 'counted', 'Silt', 5, '', 0],
      ['E2', '2024-02-03', 'wasted', 'Silt', -5, '', ''],
    ];
    expect(call('UNITCOST', 'Silt', bookOf(valuation, ...silt))).toBe(7);
  });

  it.each(['FIFO', 'Average'])('of bars sets none either (%s)', (valuation) => {
    const book = bookOf(
      valuation,
      ['E1', '2024-02-01', 'made', 'Bar', 2, 'B1', 6, 'B1'],
      ['E2', '2024-02-02', 'counted', 'Bar', 1, 'B1', 0],
      ['E3', '2024-02-03', 'sold', 'Bar', -3, 'B1', ''],
    );
    expect(call('UNITCOST', 'Bar', book)).toBe(3);
  });
});

describe('a positive move without a lot (contract §4)', () => {
  it.each([
    ['FIFO', 'its Value', 30, 330],
    ['Average', 'its Value', 30, 330],
    // 10 g at 300 ÷ 200.
    ['FIFO', 'the unit cost just before it', '', 315],
    ['Average', 'the unit cost just before it', '', 315],
    ['FIFO', 'nothing where its Value is 0', 0, 300],
  ])('under %s is worth %s', (valuation, _, value, worth) => {
    const book = bookOf(valuation, ['E1', '2024-02-01', 'counted', 'Clay', 10, '', value]);
    expect(call('STOCKVALUE', 'Clay', book)).toBe(worth);
  });

  it.each([
    // 50 g of A at 1 are left and 100 g of B at 2: 250 ÷ 150 each.
    ['FIFO', 250 + (10 * 250) / 150],
    // 150 g at 1.50.
    ['Average', 225 + 15],
  ])('under %s goes by that valuation’s own unit cost', (valuation, worth) => {
    const book = bookOf(
      valuation,
      ['E1', '2024-02-01', 'used', 'Clay', -50, 'A', ''],
      ['E2', '2024-02-02', 'counted', 'Clay', 10, '', ''],
    );
    expect(call('STOCKVALUE', 'Clay', book)).toBeCloseTo(worth, 10);
  });

  it.each(['FIFO', 'Average'])('costs an empty shelf’s unit cost there (%s)', (valuation) => {
    const book = bookOf(
      valuation,
      ['E1', '2024-02-01', 'used', 'Clay', -200, '', ''],
      ['E2', '2024-02-02', 'counted', 'Clay', 10, '', ''],
      ['E3', '2024-02-02', 'counted', 'Silt', 10, '', ''],
    );
    expect(call('STOCKVALUE', 'Clay', book)).toBe(20);
    expect(call('STOCKVALUE', 'Silt', book)).toBe(70);
  });
});

describe('two batches of one day under Average', () => {
  it.each([
    ['B1', 'B2'],
    ['B2', 'B1'],
  ])('lose nothing where %s uses what stood there and %s leaves over', (user, leaver) => {
    // 40 g for 4.00 stood there. One batch took them at 0.10; the other left 50 g worth 7.50.
    const book = bookOf(
      'Average',
      ['E1', '2024-02-01', 'left over', 'Clay base leftover', 40, 'B0', 4, 'B0'],
      ['E2', '2024-02-02', 'used', 'Clay base leftover', -40, 'B0', -4, user],
      ['E3', '2024-02-02', 'left over', 'Clay base leftover', 50, leaver, 7.5, leaver],
    );
    expect(call('STOCKVALUE', 'Clay base leftover', book)).toBe(7.5);
  });
});

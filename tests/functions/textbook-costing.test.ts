import { describe, expect, it } from 'vitest';
import { loadFunctions } from '../support/worksheet-functions.ts';
import { ranges, type Tables, table } from '../support/small-book.ts';

const call = await loadFunctions();

type Line = readonly [day: string, quantity: number, unitCost?: number];

/** A shop's year as lots (with a unit cost) and moves (without). */
function shop(valuation: string, lines: readonly Line[]): unknown {
  const lots = lines.flatMap(([day, quantity, unitCost], at) =>
    unitCost === undefined ? [] : [[`L${at}`, 'Goods', day, quantity, quantity * unitCost]],
  );
  const moves = lines.flatMap(([day, quantity, unitCost], at) =>
    unitCost === undefined ? [[`E${at}`, day, 'used', 'Goods', quantity]] : [],
  );
  const tables: Tables = {
    Settings: table('Setting | Value', ['Valuation', valuation]),
    Materials: table('Material | Kind | Unit', ['Goods', 'packaging', 'each']),
    Lots: table('Lot | Material | Received | Quantity | Paid', ...lots),
    LedgerLines: table('Entry | When | Reason | Material | Quantity', ...moves),
  };
  return call('BOOK', ...ranges(tables));
}

/**
 * OpenStax, Principles of Accounting vol. 1, ch. 10 (modules m67890 and m67891), the chapter's one
 * data set: opening 150 at 21, buy 225 at 27 and 210 at 33, sell 120 and 180; 585 units, 16 155.
 * REFERENCES V1, V2, V6.
 */
const openStax: readonly Line[] = [
  ['2024-07-01', 150, 21],
  ['2024-07-05', -120],
  ['2024-07-10', 225, 27],
  ['2024-07-15', -180],
  ['2024-07-25', 210, 33],
];
const goodsAvailable = 16_155;

/** OpenStax, the same chapter, exercise A65–67 (inputs): opening 800 at 50, buy 600 at 52, sell 400 and 350: REFERENCES V10. */
const exercise: readonly Line[] = [
  ['2024-01-01', 800, 50],
  ['2024-01-05', 600, 52],
  ['2024-01-10', -400],
  ['2024-01-20', -350],
];

describe('stock value against an open accounting textbook', () => {
  it.each([
    // Printed: ending 8,955 and cost of goods sold 7,200 (2,520 + 630 + 4,050).
    ['FIFO', openStax, '2024-07-31', 8955],
    ['FIFO', openStax, '2024-07-05', 630],
    ['FIFO', openStax, '2024-07-15', 75 * 27],
    // Printed 8,902 and 7,253 from averages rounded to cents; unrounded derived: the average is
    // (30 × 21 + 225 × 27) ÷ 255 = 26.2941… after 10 July.
    ['Average', openStax, '2024-07-31', 8902.0588],
    ['Average', openStax, '2024-07-10', 630 + 6075],
    // Derived from the exercise's inputs.
    ['FIFO', exercise, '2024-12-31', 33_700],
    ['Average', exercise, '2024-12-31', 33_057.142857],
  ])('%s', (valuation, lines, asOf, value) => {
    expect(call('STOCKVALUE', 'Goods', shop(valuation, lines), asOf)).toBeCloseTo(value, 4);
  });

  it('cost of goods sold is what is no longer there', () => {
    const sold = (valuation: string): number =>
      goodsAvailable -
      (call('STOCKVALUE', 'Goods', shop(valuation, openStax), '2024-07-31') as number);
    expect(sold('FIFO')).toBe(7200);
    expect(sold('Average')).toBeCloseTo(7252.9412, 4);
    expect(call('ONHAND', 'Goods', shop('FIFO', openStax), '2024-07-31')).toBe(285);
  });

  it('moving averages on the way (derived): 26.2941 after 10 July, then (75 × 26.2941 + 6930) ÷ 285', () => {
    const book = shop('Average', openStax);
    expect(call('UNITCOST', 'Goods', book, '2024-07-10')).toBeCloseTo(26.2941176, 6);
    expect(call('UNITCOST', 'Goods', book, '2024-07-31')).toBeCloseTo(
      (75 * 26.2941176 + 6930) / 285,
      6,
    );
  });

  it('freight belongs to the cost of a purchase (IAS 2 ¶10)', () => {
    // REFERENCES V12.
    const tables: Tables = {
      Materials: table('Material | Kind | Unit', ['Goods', 'packaging', 'each']),
      Lots: table('Lot | Material | Received | Quantity | Paid | Freight', [
        'L',
        'Goods',
        '2024-01-01',
        40,
        100,
        20,
      ]),
    };
    expect(call('UNITCOST', 'Goods', call('BOOK', ...ranges(tables)))).toBe(3);
  });
});

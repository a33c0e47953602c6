import { describe, expect, it } from 'vitest';
import type { Cell } from '../../src/workbook/port.ts';
import { errorOf, loadFunctions } from '../support/worksheet-functions.ts';
import { ranges, table, type Tables, withRows, withSetting } from '../support/small-book.ts';

const call = await loadFunctions();
const bookOf = (tables: Tables): unknown => call('BOOK', ...ranges(tables));

type Amounts = Readonly<Record<string, number>>;
const period = (tables: Tables, from: string, to: string): Amounts =>
  Object.fromEntries((call('PERIOD', bookOf(tables), from, to) as [string, number][]).slice(1));

const goods: Tables = {
  Settings: table('Setting | Value', ['Valuation', 'FIFO']),
  Materials: table('Material | Kind | Unit', ['Goods', 'packaging', 'each']),
  Designs: table('Design', ['Bar']),
  Places: table('Place | Sells as | Commission %', ['Dealer', 'on consignment', 10]),
  Lots: table('Lot | Material | Received | Quantity | Paid | Freight'),
  LedgerLines: table('Entry | When | Reason | Material | Quantity | Lot | Value | Note'),
  Sales: table('Sale | Sold on | Design | Bars | Price each | Fees | Place | Tender | Taken by'),
  Fairs: table('Fair | Opens | Stall fee | Travel', ['Quay Day', '2024-07-20', 30, 5.5]),
};

describe('PERIOD against an open accounting textbook', () => {
  /** Its goods as lots; what it sold leaves as used, since bars alone are sold. */
  const bought = (valuation: string): Tables =>
    withRows(
      withRows(
        withSetting(goods, 'Valuation', valuation),
        'Lots',
        ['L1', 'Goods', '2024-06-30', 150, 3150, ''],
        ['L2', 'Goods', '2024-07-10', 225, 6075, ''],
        ['L3', 'Goods', '2024-07-25', 210, 6930, ''],
      ),
      'LedgerLines',
      ['E1', '2024-07-05', 'used', 'Goods', -120, '', '', ''],
      ['E2', '2024-07-15', 'used', 'Goods', -180, '', '', ''],
    );

  it.each([
    // REFERENCES V1, V2: OpenStax, Principles of Accounting vol. 1, ch. 10; periodic and perpetual FIFO print the same.
    ['FIFO', 7200, 8955],
    // REFERENCES V6: moving average, printed 7 253 and 8 902 from averages in cents; to the cent derived.
    ['Average', 7252.94, 8902.06],
  ])('%s', (valuation, costOfGoods, closing) => {
    const july = period(bought(valuation), '2024-07-01', '2024-07-31');
    expect(july).toMatchObject({
      'Opening stock': 3150,
      Purchases: 13_005,
      'Closing stock': closing,
      'Cost of goods sold': costOfGoods,
    });
  });
});

describe('PERIOD of a workshop', () => {
  // Worked by hand: 10 bars at 3.00; 4 lie at the dealer's.
  const made = withRows(
    withRows(goods, 'Lots', ['L1', 'Goods', '2024-07-01', 10, 28, 2]),
    'LedgerLines',
    ['U1', '2024-07-02', 'used', 'Goods', -10, 'L1', -30, ''],
    ['A1', '2024-07-02', 'made', 'Bar', 10, 'T1', 30, ''],
    ['A2', '2024-07-03', 'sent', 'Bar', -4, 'T1', -12, ''],
    ['A3', '2024-07-03', 'sent', 'Bar @ Dealer', 4, 'T1', 12, ''],
  );
  const lived = withRows(
    withRows(
      made,
      'LedgerLines',
      ['S1', '2024-07-10', 'sold', 'Bar', -2, 'T1', -6, ''],
      ['S2', '2024-07-12', 'sold', 'Bar @ Dealer', -1, 'T1', -3, ''],
      ['G1', '2024-07-13', 'given', 'Bar', -1, 'T1', -3, 'gift to the neighbour'],
      ['W1', '2024-07-14', 'wasted', 'Bar', -1, 'T1', -3, 'dropped'],
      ['C1', '2024-07-15', 'counted', 'Bar', -1, 'T1', -3, ''],
    ),
    'Sales',
    ['S1', '2024-07-10', 'Bar', 2, 9, '', '', 'card', ''],
    ['S2', '2024-07-12', 'Bar', 1, 10, 0.25, 'Dealer', '', ''],
  );
  const priced = withSetting(
    withSetting(withSetting(lived, 'Card fee %', 2.5), 'Card fee fixed', 0.1),
    'Sales tax %',
    8,
  );

  it('has the contract’s lines in its order', () => {
    // Tax on top: 18 × 8 % = 1.44, 10 × 8 % = 0.80. Card 19.44 × 2.5 % + 0.10 = 0.59. Commission 10 % of 10.80.
    expect(call('PERIOD', bookOf(priced), '2024-07-01', '2024-07-31')).toEqual([
      ['Line', 'Amount'],
      ['Takings', 30.24],
      ['Tax', 2.24],
      ['Commission', 1.08],
      ['Fees', 0.84],
      ['Postage', 0],
      ['Net sales', 26.08],
      ['Opening stock', 0],
      ['Purchases', 30],
      ['Closing stock', 12],
      ['Cost of goods sold', 9],
      ['Given', 3],
      ['Wasted', 3],
      ['Count differences', 3],
      ['Stall and travel', 35.5],
      ['Gross profit', 17.08],
      ['Profit', -27.42],
    ]);
  });

  it('goods on consignment stay ours until they are sold', () => {
    // REFERENCES B8 (IFRS 15 ¶B77-B78): nothing is sold on delivery to the dealer.
    const sent = period(made, '2024-07-03', '2024-07-31');
    expect(sent).toMatchObject({ Takings: 0, 'Closing stock': 30, 'Cost of goods sold': 0 });
  });

  it('counts a consignment as an exercise does', () => {
    // REFERENCES B9: cost 160, 60 % sold for 120, commission 10 %: cost 96, stock 64, commission 12.
    const consigned = withRows(
      withRows(
        goods,
        'LedgerLines',
        ['M', '2024-07-01', 'made', 'Bar', 10, 'T', 160, ''],
        ['O', '2024-07-02', 'sent', 'Bar', -10, 'T', -160, ''],
        ['I', '2024-07-02', 'sent', 'Bar @ Dealer', 10, 'T', 160, ''],
        ['S', '2024-07-09', 'sold', 'Bar @ Dealer', -6, 'T', -96, ''],
      ),
      'Sales',
      ['S', '2024-07-09', 'Bar', 6, 20, '', 'Dealer', '', ''],
    );
    expect(period(consigned, '2024-07-02', '2024-07-31')).toMatchObject({
      Takings: 120,
      Commission: 12,
      'Closing stock': 64,
      'Cost of goods sold': 96,
    });
  });

  it('takes tax, fees and postage by the place', () => {
    const posted = {
      ...made,
      Places: table(
        'Place | Sells as | Commission % | Fee % | Fee fixed | Postage each | Tax %',
        ['Dealer', 'on consignment', 10, '', '', '', ''],
        ['Post', 'own shop', '', 3, 0.3, 1.2, 20],
      ),
    };
    const sold = withRows(
      withRows(
        withSetting(withSetting(posted, 'Sales tax %', 8), 'Prices include tax', 'yes'),
        'LedgerLines',
        ['S', '2024-07-09', 'sold', 'Bar', -2, 'T1', -6, ''],
      ),
      'Sales',
      // REFERENCES T1: of 120 at 20 % 20 is tax.
      ['S', '2024-07-09', 'Bar', 2, 60, '', 'Post', 'card', ''],
    );
    // Fees 120 × 3 % + 0.30.
    expect(period(sold, '2024-07-01', '2024-07-31')).toMatchObject({
      Tax: 20,
      Fees: 3.9,
      Postage: 2.4,
      'Net sales': 93.7,
    });
  });

  it('a day after the last closes on what the last closed on', () => {
    const [first, second] = [
      period(lived, '2024-07-01', '2024-07-12'),
      period(lived, '2024-07-13', '2024-07-31'),
    ];
    expect(second['Opening stock']).toBe(first['Closing stock']);
    expect(period(lived, '2024-08-01', '2024-08-31')).toMatchObject({
      'Opening stock': 12,
      'Closing stock': 12,
      'Cost of goods sold': 0,
    });
  });

  const add = (line: readonly Cell[]): Tables => withRows(lived, 'LedgerLines', line);
  it('what was taken back later comes back then', () => {
    const back = add(['R1', '2024-08-02', 'reversed', 'Bar', 1, 'T1', 3, 'G1']);
    expect(period(back, '2024-07-01', '2024-07-31')['Given']).toBe(3);
    expect(period(back, '2024-08-01', '2024-08-31')).toMatchObject({
      Given: -3,
      'Closing stock': 15,
      'Cost of goods sold': 0,
    });
  });

  it('bars without a cost are named', () => {
    const unknown = add(['M9', '2024-07-20', 'made', 'Bar @ Dealer', 2, 'T9', '', '']);
    const worthless = {
      ...unknown,
      LedgerLines: (unknown['LedgerLines'] ?? []).filter(([id]) => id !== 'A3' && id !== 'S2'),
    };
    const { code, message } = errorOf(() => period(worthless, '2024-07-01', '2024-07-31'));
    expect(code).toBe('#N/A');
    expect(message).toMatch(/Sales has bars .* Bar \(3 sold, 2 out of stock\)/u);
    const unsold = { ...worthless, Sales: table('Sale | Sold on | Design | Bars | Price each') };
    expect(errorOf(() => period(unsold, '2024-07-01', '2024-07-31')).message).toBe(
      "These have no cost, so the days can't be added up: Bar @ Dealer (entry M9). Fill in Value of these lines in LedgerLines.",
    );
  });

  it('days the wrong way round are refused', () => {
    expect(errorOf(() => period(lived, '2024-07-31', '2024-07-01')).message).toBe(
      'from is 2024-07-31 and to is 2024-07-01, a day before it. Turn them round.',
    );
  });
});

import { describe, expect, it } from 'vitest';
import { errorOf, loadFunctions } from '../support/worksheet-functions.ts';
import { ranges, table, type Tables, withCell, withRows } from '../support/small-book.ts';

const call = await loadFunctions();
const settle = (tables: Tables): unknown =>
  call('SETTLE', call('BOOK', ...ranges(tables)), '2024-07-01', '2024-07-31');

const shared: Tables = {
  Materials: table('Material | Kind | Unit', ['Goods', 'packaging', 'each']),
  Designs: table('Design', ['Bar']),
  Places: table('Place | Sells as | Commission %', ['Dealer', 'on consignment', 10]),
  Lots: table(
    'Lot | Material | Received | Quantity | Paid | Freight | Paid by',
    ['L0', 'Goods', '2024-06-30', 1, 50, '', ''],
    ['L1', 'Goods', '2024-07-01', 10, 28, 2, 'Ada'],
    ['L2', 'Goods', '2024-07-31', 5, 10, '', 'ben'],
  ),
  Batches: table(
    'Batch | Poured | Design | Bars | Minutes | State | By',
    ['T1', '2024-07-02', 'Bar', 6, 90, '', 'Cy'],
    ['T2', '2024-07-03', 'Bar', 6, 40, 'undone', 'Cy'],
  ),
  Sales: table(
    'Sale | Sold on | Design | Bars | Price each | Fees | Place | Tender | Taken by',
    ['S1', '2024-07-10', 'Bar', 10, 10, 1, '', '', 'Ada'],
    ['S2', '2024-07-11', 'Bar', 1, 10, '', 'Dealer', '', 'Cy'],
  ),
  Partners: table('Partner | Share %', ['Ada', 50], ['Ben', 30], ['Cy', 20]),
};

describe('SETTLE', () => {
  it('says who owes whom', () => {
    // To share: 99 + 9 taken less 30 + 10 paid = 68, by 50 : 30 : 20.
    expect(settle(shared)).toEqual([
      ['Partner', 'Paid', 'Took', 'Minutes', 'Share', 'Owed'],
      ['Ada', 30, 99, 0, 34, -35],
      ['Ben', 10, 0, 0, 20.4, 30.4],
      ['Cy', 0, 9, 90, 13.6, 4.6],
    ]);
  });

  it('shares cents by largest remainder', () => {
    // REFERENCES R11: 1 001 units by 5 : 3 : 2 are 501, 300 and 200.
    const cents = {
      ...shared,
      Lots: table('Lot | Material | Received | Quantity | Paid'),
      Sales: table('Sale | Sold on | Design | Bars | Price each | Taken by', [
        'S',
        '2024-07-10',
        'Bar',
        1,
        10.01,
        'Ada',
      ]),
    };
    expect((settle(cents) as unknown[][]).slice(1).map((row) => row[4])).toEqual([5.01, 3, 2]);
  });

  it('lines of nobody are listed', () => {
    const open = withRows(
      withCell(shared, 'Lots', 2, 'Paid by', ''),
      'Sales',
      ['S3', '2024-07-12', 'Bar', 1, 9, '', '', '', ''],
      ['S4', '2024-08-12', 'Bar', 1, 9, '', '', '', ''],
    );
    const { code, message } = errorOf(() => settle(open));
    expect(code).toBe('#VALUE!');
    expect(message).toBe(
      'Lines in Lots without Paid by: L1. Lines in Sales without Taken by: S3. Type who it was, as in Partners.',
    );
  });

  it('there is nothing to say before anyone shares', () => {
    const alone = { ...shared, Partners: table('Partner | Share %') };
    expect(errorOf(() => settle(alone)).code).toBe('#N/A');
  });
});

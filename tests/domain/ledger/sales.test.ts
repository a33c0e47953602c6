import { describe, expect, it } from 'vitest';
import { findDesign, findItem } from '../../../src/domain/book/find.ts';
import { Exact } from '../../../src/domain/kernel/exact.ts';
import { postSales } from '../../../src/domain/ledger/post-sales.ts';
import type { SellingDay } from '../../../src/domain/ledger/sale.ts';
import { undoSales } from '../../../src/domain/ledger/undo-sales.ts';
import { onHand } from '../../../src/domain/stock/on-hand.ts';
import { stockValue } from '../../../src/domain/stock/valuation.ts';
import { changeForSales } from '../../../src/workbook/change.ts';
import { findTables } from '../../../src/workbook/find-tables.ts';
import { applyChange } from '../../support/apply-change.ts';
import { post, readTables, sure } from '../../support/ledger-of.ts';
import { day, pourOf } from '../../support/pour-of.ts';
import { tableData, type Tables, withRows, workshop } from '../../support/small-book.ts';

const FAIR_DAY = day('2024-03-10');
const poured = post(workshop, pourOf('Tide Pool', 12), FAIR_DAY)?.after ?? workshop;

type Lines = readonly (readonly [bars: number, price: string])[];

/** Works out a day of selling Tide Pools; the day differs from the usual one as said. */
function sell(tables: Tables, lines: Lines, differs: Partial<SellingDay> = {}, today = FAIR_DAY) {
  const book = readTables(tables);
  const design = sure(findDesign(book, 'Tide Pool'));
  const selling: SellingDay = {
    id: 'S1',
    soldOn: FAIR_DAY,
    fair: 'Harbour Fair',
    lines: lines.map(([count, price]) => ({ design, bars: count, priceEach: new Exact(price) })),
    fees: new Exact(1),
    by: '',
    ...differs,
  };
  return postSales(book, selling, today);
}

function bars(tables: Tables) {
  const book = readTables(tables);
  const item = sure(findItem(book, 'Tide Pool'));
  return {
    count: onHand(book, item, FAIR_DAY).toString(),
    value: sure(stockValue(book, item, FAIR_DAY)).toString(),
  };
}

describe('postSales', () => {
  it('writes a sale a line, a move a batch, and shares the fees by takings to the cent', () => {
    const posting = sure(
      sell(poured, [
        [2, '9.5'],
        [1, '8'],
      ]),
    );
    expect(
      posting.sales.map(({ sale, bars: sold, fees }) => [sale, sold, fees.toString()]),
    ).toEqual([
      // 1.00 by 19 : 8 is 0.7037 and 0.2963.
      ['S1.01', 2, '0.7'],
      ['S1.02', 1, '0.3'],
    ]);
    expect(
      posting.moves.map(({ reason, quantity, lot }) => [reason, quantity.toString(), lot]),
    ).toEqual([['sold', '-3', 'B1']]);
  });

  it('takes bars off the shelf, and undo puts them back exactly', () => {
    const names = findTables(tableData(poured));
    const sold = applyChange(poured, sure(changeForSales(sure(sell(poured, [[5, '9.5']])), names)));
    expect(bars(sold).count).toBe('7');
    const back = applyChange(
      sold,
      sure(changeForSales(sure(undoSales(readTables(sold), 'S1', FAIR_DAY, '')), names)),
    );
    expect(bars(back)).toEqual(bars(poured));
    expect(readTables(back).sales.map(({ bars: each }) => each)).toEqual([5, -5]);
    expect(undoSales(readTables(back), 'S1', FAIR_DAY, '').ok).toBe(false);
  });

  it.each([
    [
      'more bars than in stock',
      [[13, '9']],
      {},
      /13 bars of Tide Pool are more than the 12 in stock/,
    ],
    [
      'more in two lines together',
      [
        [7, '9'],
        [6, '8'],
      ],
      {},
      /13 bars/,
    ],
    ['zero bars', [[0, '9']], {}, /Bars of Tide Pool is 0/],
    ['a negative price', [[1, '-9']], {}, /Price of Tide Pool is -9/],
    ['negative fees', [[1, '9']], { fees: new Exact(-1) }, /Fees is -1/],
    ['an unknown fair', [[1, '9']], { fair: 'Moon Fair' }, /not a fair/],
    ['nothing sold', [], {}, /Nothing was sold/],
    [
      'a day before the pour',
      [[1, '9']],
      { soldOn: day('2024-02-01') },
      /more than the 0 in stock/,
    ],
  ] as const)('refuses %s with a sentence', (_, lines, differs, sentence) => {
    const result = sell(poured, lines, differs);
    expect(!result.ok && result.failure.sentence).toMatch(sentence);
  });

  it('written down late counts what has left the shelf since', () => {
    const since = withRows(poured, 'LedgerLines', [
      ...['W1', '2024-03-12', 'given', 'Tide Pool', -10, '', '', '', '', 'gift'],
    ]);
    const late = day('2024-03-15');
    expect(sure(sell(since, [[2, '9']], {}, late)).moves).toHaveLength(1);
    const tooMany = sell(since, [[3, '9']], {}, late);
    expect(!tooMany.ok && tooMany.failure.sentence).toMatch(
      /3 bars of Tide Pool are more than the 2 in stock/,
    );
  });

  it('refuses a day that stands in Sales already', () => {
    const once = applyChange(
      poured,
      sure(changeForSales(sure(sell(poured, [[1, '9']])), findTables(tableData(poured)))),
    );
    const again = sell(once, [[1, '9']]);
    expect(!again.ok && again.failure.sentence).toMatch(/S1\.01.*not recorded again/);
  });
});

import { describe, expect, it } from 'vitest';
import { findItem } from '../../../src/domain/book/find.ts';
import { exact, toCell } from '../../../src/domain/kernel/exact.ts';
import { takeStock } from '../../../src/domain/ledger/take-stock.ts';
import { readTables, sure } from '../../support/ledger-of.ts';
import { day } from '../../support/pour-of.ts';
import { type Tables, withSetting, workshop } from '../../support/small-book.ts';

/** 50 boxes in lot B1 came on 2024-01-05; 30 were used on 1 March, 40 more came in B2 on 10 March. */
const tables: Tables = {
  ...workshop,
  Lots: [...(workshop['Lots'] ?? []), ['B2', 'Box', '2024-03-10', 40, 20, '', '', '']],
  LedgerLines: [
    ...(workshop['LedgerLines'] ?? []),
    ['E1', '2024-03-01', 'used', 'Box', -30, 'B1', -12, 'T1', '', ''],
  ],
};

function taken(quantity: number, on: string, latest: string, countIsOff = false, from = tables) {
  const book = readTables(from);
  const when = { day: day(on), latest: day(latest) };
  const { picks, shortage, counted } = sure(
    takeStock(book, sure(findItem(book, 'Box')), exact(quantity), when, countIsOff),
  );
  return {
    picks: picks.map((pick) => [pick.lot, toCell(pick.quantity), toCell(pick.value)]),
    short: shortage && toCell(shortage.short),
    counted: counted && [counted.lot, toCell(counted.quantity), toCell(counted.value)],
  };
}

describe('what is recorded for an earlier day', () => {
  it('takes only what no later move has taken since', () => {
    // On 1 February there were 50, of which 30 are gone by now.
    expect(taken(20, '2024-02-01', '2024-03-20').picks).toEqual([['B1', 20, 8]]);
    expect(taken(21, '2024-02-01', '2024-03-20')).toEqual({ picks: [], short: 1 });
    expect(taken(50, '2024-02-01', '2024-02-01').picks).toEqual([['B1', 50, 20]]);
  });

  it('takes nothing that came later', () => {
    expect(taken(25, '2024-03-09', '2024-03-20').short).toBe(5);
    expect(taken(25, '2024-03-10', '2024-03-20').picks).toEqual([
      ['B1', 20, 8],
      ['B2', 5, 2.5],
    ]);
  });

  it('for a day to come looks at the shelf of that day', () => {
    expect(taken(60, '2024-03-10', '2024-02-01').picks).toEqual([
      ['B1', 20, 8],
      ['B2', 40, 20],
    ]);
  });
});

describe('what is short where the maker says that the count is off', () => {
  it('is counted in first, at what the rest cost', () => {
    // 20 of 20 cents 40 and 40 of 50 are 28 for 60.
    expect(taken(65, '2024-03-10', '2024-03-10', true)).toEqual({
      picks: [
        ['B1', 20, 8],
        ['B2', 45, 22.5],
      ],
      short: 5,
      counted: ['B2', 5, 2.5],
    });
  });

  it('is at the average where stock is valued so', () => {
    const average = withSetting(tables, 'Valuation', 'Average');
    const { picks } = taken(30, '2024-03-10', '2024-03-10', false, average);
    // 28 for 60 on the shelf.
    expect(
      picks.map(([lot, quantity, value]) => [lot, quantity, Number(value).toFixed(6)]),
    ).toEqual([
      ['B1', 20, '9.333333'],
      ['B2', 10, '4.666667'],
    ]);
  });
});

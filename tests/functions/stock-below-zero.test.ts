import { describe, expect, it } from 'vitest';
import type { Cell } from '../../src/workbook/port.ts';
import { errorOf, loadFunctions } from '../support/worksheet-functions.ts';
import { ranges, type Tables, withRows, withSetting, workshop } from '../support/small-book.ts';

const call = await loadFunctions();
const bookOf = (tables: Tables): unknown => call('BOOK', ...ranges(tables));

describe('stock below zero', () => {
  const owed = (valuation: string, material: readonly Cell[]): unknown =>
    bookOf(
      withRows(
        withRows(withSetting(workshop, 'Valuation', valuation), 'Materials', material),
        'LedgerLines',
        ['H1', '2024-03-01', 'wasted', 'Rose clay', -10, '', '', '', '', ''],
      ),
    );
  const clay = (packSize: Cell, packPrice: Cell): Cell[] => [
    'Rose clay',
    'colourant',
    'g',
    '',
    '',
    packSize,
    packPrice,
    '',
    '',
    '',
    '',
    '',
  ];

  it.each(['FIFO', 'Average'])('has no value under %s while it has no cost', (valuation) => {
    for (const id of ['STOCKVALUE', 'UNITCOST']) {
      const { code, message } = errorOf(() => call(id, 'Rose clay', owed(valuation, clay('', ''))));
      expect(code).toBe('#N/A');
      expect(message).toMatch(/Rose clay has no cost yet: enter a lot/);
    }
  });

  // 10 g at 20 for 100 g are 2.00, owed.
  it.each(['FIFO', 'Average'])('is owed at the pack price under %s', (valuation) => {
    expect(call('STOCKVALUE', 'Rose clay', owed(valuation, clay(100, 20)))).toBe(-2);
  });
});

import { describe, expect, it } from 'vitest';
import { column, loadFunctions } from '../support/worksheet-functions.ts';
import { movedWorkshop } from '../support/moved-workshop.ts';
import { ranges, table, type Tables, withCell, withRows, workshop } from '../support/small-book.ts';

const call = await loadFunctions();
const bookOf = (tables: Tables): unknown => call('BOOK', ...ranges(tables));

describe('STOCKLIST', () => {
  const list = call('STOCKLIST', bookOf(movedWorkshop), '2024-03-10') as unknown[][];

  it('lists all materials and what was made and is on hand', () => {
    expect(list[0]).toEqual([
      'Item',
      'Kind',
      'On hand',
      'Unit',
      'Value',
      'Reorder point',
      'Order packs',
      'Earliest best before',
    ]);
    expect(column(list, 'Item')).toEqual([
      'Clear base',
      'White base',
      'Blue mica',
      'Green drops',
      'Orange oil',
      'Alcohol',
      'Glycerin',
      'Box',
      'Slate leftover',
      'Teal × Tiles',
      'Tide Pool',
    ]);
    expect(column(list, 'Kind').slice(-3)).toEqual(['leftover', 'spare', 'bars']);
  });

  it('answers as the single functions do', () => {
    const book = bookOf(movedWorkshop);
    for (const [item, , onHand, , value, point] of list.slice(1)) {
      expect(onHand).toBe(call('ONHAND', item, book, '2024-03-10'));
      expect(value).toBe(call('STOCKVALUE', item, book, '2024-03-10'));
      if (point !== '') expect(point).toBe(call('REORDERPOINT', item, book, '2024-03-10'));
    }
    expect(column(list, 'Reorder point').filter((point) => point !== '')).toHaveLength(2);
  });

  it('shows the earliest best before of what is left, and blanks for what can’t be told yet', () => {
    const bestBefore = Object.fromEntries(list.map((row) => [row[0], row[7]]));
    expect(bestBefore).toMatchObject({
      'Clear base': '2025-03-31',
      'White base': '',
      'Orange oil': '2024-12-31',
    });
  });

  it('orders whole packs at or below the reorder point, none above', () => {
    const packs = (left: number): unknown => {
      const tables = withRows(movedWorkshop, 'LedgerLines', [
        'E9',
        '2024-03-10',
        'wasted',
        'Blue mica',
        left - 96,
        '',
        '',
        '',
        '',
        '',
      ]);
      const rows = call('STOCKLIST', bookOf(tables), '2024-03-10') as unknown[][];
      return rows.find(([item]) => item === 'Blue mica')?.[6];
    };
    const point = call('REORDERPOINT', 'Blue mica', bookOf(movedWorkshop), '2024-03-10') as number;
    // Use of 4 g on one day of ten: mean 0.4, SD 4 ÷ √10; 9 days, z(0.95).
    expect(point).toBeCloseTo(3.6 + 1.644853627 * Math.sqrt(9 * 1.6), 8);
    expect(packs(96)).toBe(0);
    expect(packs(Math.floor(point))).toBe(1);
    expect(packs(1)).toBe(1);
  });

  // 5 boxes a day on each of ten days, lead 3 days: the point is 15, and none of the 50 is left.
  it.each([
    // Three packs only reach the point, where an order is due again.
    [5, 4],
    // 15 ÷ 4 = 3.75: four packs make 16.
    [4, 4],
    [50, 1],
  ])('orders as many packs of %d as lift stock over the point', (packSize, packs) => {
    const days = Array.from({ length: 10 }, (_, at) => [
      `E${at}`,
      `2024-03-${String(at + 1).padStart(2, '0')}`,
      'used',
      'Box',
      -5,
      ...['', '', '', '', ''],
    ]);
    const tables = withRows(
      withCell(workshop, 'Materials', 8, 'Pack size', packSize),
      'LedgerLines',
      ...days,
    );
    const rows = call('STOCKLIST', bookOf(tables), '2024-03-10') as unknown[][];
    expect(rows.find(([item]) => item === 'Box')?.slice(2, 7)).toEqual([0, 'each', 0, 15, packs]);
  });

  it('is empty but for its header without materials', () => {
    expect(call('STOCKLIST', bookOf({ Settings: table('Setting | Value') }))).toHaveLength(1);
  });
});

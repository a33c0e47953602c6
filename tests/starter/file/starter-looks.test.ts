import { expect, it } from 'vitest';
import { styleOf } from '../../../src/starter/file/starter-looks.ts';
import { reorderCheckSheet } from '../../../src/starter/sheets/reorder-check-sheet.ts';

it('shows simulated stock below nothing as what it is short by', () => {
  const { cells } = reorderCheckSheet('Base');
  // Both points' lows and both "Missing" columns, a row for each of 52 weeks.
  const stock = cells.filter(({ look }) => look.format === 'stock');
  expect(new Set(stock.map(({ column }) => column)).size).toBe(4);
  expect(stock).toHaveLength(4 * 52);
  for (const { look } of stock)
    expect(styleOf(look).numberFormat).toBe('#,##0.0;"short by "#,##0.0');
});

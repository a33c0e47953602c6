import { expect } from 'vitest';
import { type CallFunction, type CellError, errorOf } from './worksheet-functions.ts';
import { ranges, type Tables, withRows, workshop } from './small-book.ts';

/** The small workshop with a row in every table, so that each can be spoilt. */
export const fullWorkshop: Tables = [
  ['LedgerLines', ['E1', '2024-03-01', 'used', 'Clear base', -5, 'C1', -0.04, 'T1', 'me', '']],
  [
    'Batches',
    ['T1', '2024-03-01', 'Tide Pool', 2, 2, 0, 60, 1, 2, '2024-03-02', 'posted', 'me', ''],
  ],
  ['Sales', ['S1', '2024-03-08', 'Tide Pool', 1, 9.5, 'Harbour Fair', 0.2]],
].reduce<Tables>(
  (tables, [name, row]) => withRows(tables, String(name), row as string[]),
  workshop,
);

/** What BOOK says of tables that are not in order. */
export const refusalOf = (call: CallFunction, tables: Tables): CellError =>
  errorOf(() => call('BOOK', ...ranges(tables)));

/** Every sentence says where, and is short enough to read. */
export function expectSentence(error: CellError, start: string): void {
  expect(error.code).toBe('#VALUE!');
  expect(error.message.startsWith(start), error.message).toBe(true);
  expect(error.message.length).toBeLessThan(6000);
  expect(error.message).not.toMatch(/fault of its own|undefined|NaN|\[object/);
}

import { describe, expect, it } from 'vitest';
import type { Cell } from '../../src/workbook/port.ts';
import { errorOf, loadFunctions } from '../support/worksheet-functions.ts';
import { refusalOf } from '../support/full-workshop.ts';
import { ranges, type Tables, withRows, workshop } from '../support/small-book.ts';

const call = await loadFunctions();
const bookOf = (tables: Tables): unknown => call('BOOK', ...ranges(tables));
const ledger = (...moves: readonly (readonly Cell[])[]): Tables =>
  withRows(workshop, 'LedgerLines', ...moves);
const used: Cell[] = ['E1', '2024-03-02', 'used', 'Clear base', -5, 'C1', -0.04, '', '', ''];
const reversal = (
  cells: Partial<Record<'entry' | 'when' | 'item' | 'quantity' | 'note', Cell>>,
) => {
  const {
    entry = 'R1',
    when = '2024-03-03',
    item = 'Clear base',
    quantity = 5,
    note = 'E1',
  } = cells;
  return [entry, when, 'reversed', item, quantity, '', '', '', '', note];
};

describe('a reversal that fits no move is refused with what to type (contract §4)', () => {
  it.each([
    [
      'no Entry',
      { note: '' },
      'Note is blank. Type the Entry of the line that this one takes back.',
    ],
    ['an unknown Entry', { note: 'E11' }, 'Note is "E11", which is no Entry. Did you mean "E1"?'],
    ['itself', { note: 'R1' }, 'Quantity is 5, but entry "R1", which it takes back, moved 5.'],
    [
      'another item',
      { item: 'White base' },
      'Material is "White base", but entry "E1", which it takes back, moved "Clear base". Type that',
    ],
    [
      'another quantity',
      { quantity: 4 },
      'Quantity is 4, but entry "E1", which it takes back, moved -5. Type 5.',
    ],
    [
      'a later move',
      { when: '2024-03-01' },
      'When is before that of entry "E1", which it takes back, 2024-03-02. Type that day or a later one.',
    ],
  ])('%s', (_, cells, says) => {
    const { code, message } = refusalOf(call, ledger(used, reversal(cells)));
    expect(code).toBe('#VALUE!');
    expect(message).toContain(`LedgerLines, row 2, ${says}`);
  });

  it('a move taken back twice', () => {
    const twice = ledger(used, reversal({}), reversal({ entry: 'R2', when: '2024-03-04' }));
    expect(refusalOf(call, twice).message).toBe(
      'LedgerLines, row 2, Note is "E1", which does not stand, since another line takes it back. Clear this row, or take it back by a line with "R1" in its Note.',
    );
    const mended = ledger(
      ...(twice['LedgerLines'] ?? []).slice(1),
      reversal({ entry: 'R3', when: '2024-03-05', quantity: -5, note: 'r1' }),
    );
    expect(call('ONHAND', 'Clear base', bookOf(mended))).toBe(5000);
  });

  it('two that name each other', () => {
    const circle = ledger(
      reversal({ note: 'R2' }),
      reversal({ entry: 'R2', quantity: -5, note: 'R1' }),
    );
    expect(refusalOf(call, circle).message.split('\n')).toHaveLength(2);
  });

  it('one that is taken back stands, in any order of rows and whatever their ids', () => {
    const rows = [
      used,
      reversal({ entry: 'Z' }),
      reversal({ entry: 'A', quantity: -5, note: 'Z' }),
      reversal({ entry: 'M', quantity: 5, note: 'A' }),
    ];
    for (const order of [rows, [...rows].reverse()])
      expect(call('ONHAND', 'Clear base', bookOf(ledger(...order)))).toBe(5000);
    for (const order of [rows.slice(0, 3), rows.slice(0, 3).reverse()])
      expect(call('ONHAND', 'Clear base', bookOf(ledger(...order)))).toBe(4995);
  });

  it('is taken by the day, whatever the hour', () => {
    const early = ledger(
      [...used.slice(0, 1), '2024-03-02 17:00', ...used.slice(2)],
      reversal({ when: '2024-03-02' }),
    );
    expect(call('ONHAND', 'Clear base', bookOf(early))).toBe(5000);
  });
});

describe('what no material does (contract §4)', () => {
  it.each([
    ['made', 5, 'counted'],
    ['left over', 5, 'counted'],
    ['sold', -5, 'used", "wasted" or "given'],
  ])('%s', (reason, quantity, instead) => {
    const row = ['E1', '2024-03-01', reason, 'Clear base', quantity, '', '', '', '', ''];
    expect(refusalOf(call, ledger(row)).message).toBe(
      `LedgerLines, row 1, Reason is "${reason}", but "Clear base" is a material, which is bought and used. Use "${instead}".`,
    );
  });
});

describe('what is given says how (contract §4)', () => {
  const given = (item: string, quantity: number, note: string): Tables =>
    ledger(
      ['E1', '2024-03-01', 'made', 'Tide Pool', 6, 'T1', 12, 'T1', '', ''],
      ['E2', '2024-03-02', 'given', item, quantity, '', '', '', '', note],
    );

  it.each(['gift for the neighbours', 'Tester', 'DONATION: school fair', 'own use'])(
    '%s',
    (note) => {
      expect(call('ONHAND', 'Tide Pool', bookOf(given('Tide Pool', -2, note)))).toBe(4);
    },
  );

  it.each(['', 'for a friend', 'gifted', 'a gift'])('refuses %j', (note) => {
    expect(refusalOf(call, given('Tide Pool', -2, note)).message).toMatch(
      /^LedgerLines, row 2, Note is .*Begin it with gift, tester, donation, own use\.$/u,
    );
  });

  it('takes away, and is no use that a reorder point looks at', () => {
    expect(refusalOf(call, given('Tide Pool', 2, 'gift')).message).toContain('takes stock away');
    const book = bookOf(given('Box', -40, 'gift'));
    const { message } = errorOf(() => call('REORDERPOINT', 'Box', book, '2024-03-05'));
    expect(message).toMatch(/Box has no use recorded yet/);
  });
});

import { describe, expect, it } from 'vitest';
import type { Cell } from '../../../src/workbook/port.ts';
import { findItem } from '../../../src/domain/book/find.ts';
import { unitCost } from '../../../src/domain/stock/valuation.ts';
import { table, withCell, withRows } from '../../support/small-book.ts';
import { bookOf, sound } from '../label/label-book.ts';
import { check, kinds, repaired, TODAY, wholeLedger, withoutMove } from './ledgers.ts';

describe('healthCheck on stock and lots', () => {
  it('finds the first day below zero and how deep it went, though it is above today', () => {
    let tables = withRows(
      wholeLedger,
      'LedgerLines',
      ['S2', '2024-02-03', 'sold', 'Plain', -3, '', -27, '', '', ''],
      ['S3', '2024-02-05', 'sold', 'Plain', -2, '', -18, '', '', ''],
      ['C1', '2024-02-06', 'counted', 'Plain', 9, '', 81, '', '', ''],
    );
    const [finding] = check(tables);
    expect(finding).toMatchObject({ kind: 'stock below zero', about: 'Plain' });
    expect(finding?.says).toMatch(/On 2024-02-03 the ledger had -1 of Plain, and at worst -3/);
    tables = repaired(tables, finding?.repair);
    expect(kinds(tables)).toEqual([]);
  });

  it('does not mind what was taken back, nor the order within a day', () => {
    const tables = withRows(
      wholeLedger,
      'LedgerLines',
      ['S2', '2024-02-03', 'sold', 'Plain', -30, '', -27, '', '', ''],
      ['S2.R', '2024-03-03', 'reversed', 'Plain', 30, '', 27, '', '', 'S2'],
      ['A1', '2024-01-01', 'wasted', 'Clear base', -50, '', -5, '', '', ''],
    );
    expect(kinds(tables)).toEqual([]);
  });

  it('counts in what has no cost without a Value, so that the pack price tells it later', () => {
    const withClay = (size: Cell, price: Cell) =>
      withRows(
        {
          ...wholeLedger,
          Materials: table(
            'Material | Kind | Unit | Pack size | Pack price',
            ['Clear base', 'base', 'g', '', ''],
            ['Rose clay', 'colourant', 'g', size, price],
          ),
        },
        'LedgerLines',
        ['U1', '2024-02-01', 'used', 'Rose clay', -10, '', '', '', '', ''],
      );
    const [finding] = check(withClay('', ''));
    const [move] = finding?.repair?.moves ?? [];
    expect([move?.quantity.toNumber(), move?.value]).toEqual([10, undefined]);
    const book = bookOf(repaired(withClay(100, 20), finding?.repair));
    // 20 for 100 g.
    const clay = sound(findItem(book, 'Rose clay'));
    expect(sound(unitCost(book, clay, TODAY)).toNumber()).toBe(0.2);
  });

  it('finds a lot used before it came', () => {
    const tables = withCell(wholeLedger, 'Lots', 1, 'Received', '2024-02-02');
    expect(kinds(tables)).toEqual([
      ['lot used before it came', 'L1'],
      ['stock below zero', 'Clear base'],
    ]);
    expect(check(tables)[0]?.says).toMatch(
      /L1 \(Clear base\) came on 2024-02-02, but was taken from before: entry B1\.01 on 2024-02-01/,
    );
  });

  it('finds a lot used beyond its quantity, though another lot has enough', () => {
    let tables = withRows(wholeLedger, 'Lots', ['L2', 'Clear base', '2024-01-02', 500, 50]);
    tables = withRows(tables, 'LedgerLines', [
      'W1',
      '2024-03-01',
      'wasted',
      'Clear base',
      -130,
      'L1',
      -13,
    ]);
    const [finding, ...others] = check(tables);
    expect(others).toEqual([]);
    expect(finding).toMatchObject({ kind: 'lot used beyond its quantity', about: 'L1' });
    expect(finding?.says).toMatch(/took 30 g more of lot L1 .* from 2024-03-01 on/);
    expect(kinds(repaired(tables, finding?.repair))).toEqual([]);
  });

  it('makes ids that the ledger does not have', () => {
    const tables = withRows(
      withCell(withoutMove(wholeLedger, 4), 'Batches', 1, 'State', 'undone'),
      'LedgerLines',
      ['b1.01.r', '2024-02-01', 'counted', 'Clear base', 1, 'L1', 0.1, '', '', ''],
    );
    const entries = check(tables)[0]?.repair?.moves.map(({ entry }) => entry);
    expect(entries?.[0]).toBe('B1.01.R.2');
  });
});

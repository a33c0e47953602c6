import { describe, expect, it } from 'vitest';
import { withCell, withRows } from '../../support/small-book.ts';
import { bookOf } from '../label/label-book.ts';
import {
  check,
  kinds,
  onHandOf,
  repaired,
  TODAY,
  wholeLedger,
  withoutMove,
  withPosted,
} from './ledgers.ts';

describe('healthCheck on batches', () => {
  it('finds nothing in a whole ledger, nor in what our own posting writes', () => {
    expect(kinds(wholeLedger)).toEqual([]);
    expect(kinds(withPosted(TODAY, ''))).toEqual([]);
  });

  it('adds the line of a batch that is whole but for it', () => {
    const tables = { ...wholeLedger, Batches: (wholeLedger['Batches'] ?? []).slice(0, 1) };
    const [finding] = check(tables);
    expect(finding).toMatchObject({ kind: 'ledger lines without a batch', about: 'B1' });
    expect(finding?.says).toMatch(/3 ledger lines name batch B1, which is not in Batches/);
    const after = repaired(tables, finding?.repair);
    expect(kinds(after)).toEqual([]);
    expect(bookOf(after).batches.get('b1')).toMatchObject({ bars: 4, good: 4, state: 'recorded' });
  });

  it('takes back a batch that was written by halves and has no line', () => {
    const half = withoutMove(wholeLedger, 4);
    const tables = { ...withoutMove(half, 3), Batches: (half['Batches'] ?? []).slice(0, 1) };
    const [finding] = check(tables);
    const after = repaired(tables, finding?.repair);
    expect(kinds(after)).toEqual([]);
    expect(onHandOf(bookOf(after), 'Clear base')).toBe(500);
    expect(onHandOf(bookOf(after), 'Tint leftover')).toBe(0);
  });

  it('asks whether a mistyped batch is meant', () => {
    const tables = withRows(wholeLedger, 'LedgerLines', [
      'E9',
      '2024-03-01',
      'used',
      'Clear base',
      -1,
      'L1',
      -0.1,
      'B11',
    ]);
    expect(check(tables)[0]?.says).toMatch(/Is B1 meant\?/);
  });

  it('puts missing bars in stock at the value that no other move holds', () => {
    const tables = withoutMove(withoutMove(wholeLedger, 4), 3);
    const [finding, ...others] = check(tables);
    expect(others).toEqual([]);
    expect(finding).toMatchObject({ kind: 'bars not as the batch says', about: 'B1' });
    const move = finding?.repair?.moves[0];
    expect([move?.quantity.toNumber(), move?.value?.toNumber(), move?.lot]).toEqual([4, 36, 'B1']);
    const after = repaired(tables, finding?.repair);
    expect(kinds(after)).toEqual([]);
    expect(onHandOf(bookOf(after), 'Plain')).toBe(4);
  });

  it('finds surplus bars, and leaves them to the maker', () => {
    const [finding] = check(withCell(wholeLedger, 'Batches', 1, 'Good', 3));
    expect(finding).toMatchObject({ kind: 'bars not as the batch says', repair: undefined });
  });

  it('finds value out that is not value in, to the cent', () => {
    expect(kinds(withCell(wholeLedger, 'LedgerLines', 2, 'Value', 4.01))).toEqual([
      ['value out is not value in', 'B1'],
    ]);
    const [finding] = check(withoutMove(wholeLedger, 2));
    expect(finding?.says).toMatch(/B1 used 4 USD more than its bars, spares and leftovers hold/);
    const [blank] = check(withCell(wholeLedger, 'LedgerLines', 2, 'Value', ''));
    expect(blank?.says).toMatch(/no Value in B1\.02/);
  });

  it('lets a batch without a good bar write its value off', () => {
    let tables = withoutMove(withoutMove(wholeLedger, 4), 3);
    tables = withCell(tables, 'Batches', 1, 'Good', 0);
    expect(kinds(tables)).toEqual([]);
  });

  it('finds a batch without moves', () => {
    const tables = withRows(wholeLedger, 'Batches', ['B2', '2024-03-01', 'Plain', 4, 4, 'posted']);
    expect(kinds(tables)).toEqual([['batch without ledger lines', 'B2']]);
    const undone = withRows(wholeLedger, 'Batches', ['B2', '2024-03-01', 'Plain', 4, 4, 'Undone']);
    expect(kinds(undone)).toEqual([]);
  });

  it('finishes an undo that stopped half-way', () => {
    let tables = withCell(withoutMove(wholeLedger, 4), 'Batches', 1, 'State', 'undone');
    tables = withRows(tables, 'LedgerLines', [
      'B1.03.R',
      '2024-02-03',
      'reversed',
      'Plain',
      -4,
      'B1',
      -36,
      'B1',
      '',
      'B1.03',
    ]);
    const [finding] = check(tables);
    expect(finding).toMatchObject({ kind: 'batch half undone', about: 'B1' });
    const after = repaired(tables, finding?.repair);
    expect(kinds(after)).toEqual([]);
    expect(onHandOf(bookOf(after), 'Clear base')).toBe(500);
  });

  it('finds a State that its moves deny', () => {
    const whole = repaired(
      withCell(withoutMove(wholeLedger, 4), 'Batches', 1, 'State', 'undone'),
      check(withCell(withoutMove(wholeLedger, 4), 'Batches', 1, 'State', 'undone'))[0]?.repair,
    );
    expect(kinds(withCell(whole, 'Batches', 1, 'State', 'posted'))).toEqual([
      ['state not as the ledger says', 'B1'],
    ]);
  });
});

import { describe, expect, it } from 'vitest';
import type { Cell } from '../../../src/workbook/port.ts';
import { type Tables, withCell, withRows } from '../../support/small-book.ts';
import { check, kinds, repaired, TODAY, wholeLedger, withPosted } from './ledgers.ts';

const whole = withPosted(TODAY - 1, 'Ben');
const ofB2 = ({ LedgerLines = [] }: Tables): readonly (readonly Cell[])[] =>
  LedgerLines.filter((row) => row[7] === 'B2').map((row) => row.slice(0, 8));
const rowsOfB2 = (whole['LedgerLines'] ?? []).flatMap((row, at) => (row[7] === 'B2' ? [at] : []));
const without = (tables: Tables, rows: readonly number[]): Tables => ({
  ...tables,
  LedgerLines: (tables['LedgerLines'] ?? []).filter((_, at) => !rows.includes(at)),
});

describe('the moves that a batch lacks', () => {
  it('are written as the recipe says, however many are gone', () => {
    expect(kinds(whole)).toEqual([]);
    expect(rowsOfB2.length).toBeGreaterThan(2);
    // Every set of lines that can be lost.
    for (let lost = 1; lost < 2 ** rowsOfB2.length; lost += 1) {
      const gone = rowsOfB2.filter((_, bit) => (lost & (2 ** bit)) !== 0);
      const tables = without(whole, gone);
      const found = check(tables).find(({ about }) => about === 'B2');
      const after = repaired(tables, found?.repair);
      expect(kinds(after), `without rows ${gone.join(', ')}`).toEqual([]);
      // With none left nobody can tell whether leftovers went in.
      if (gone.length === rowsOfB2.length) continue;
      expect([...ofB2(after)].sort()).toEqual([...ofB2(whole)].sort());
    }
  });

  it('are left to the maker where the pour went another way than the recipe', () => {
    const [, second = 0] = rowsOfB2;
    const weighed = withCell(
      without(whole, rowsOfB2.slice(-1)),
      'LedgerLines',
      second,
      'Quantity',
      -49,
    );
    const found = check(weighed).find(({ about }) => about === 'B2');
    expect(found?.repair?.moves.map(({ note }) => note)).not.toContain(
      'Health check: this line was missing, written as the recipe says',
    );
  });

  it('are left to the maker where stock is short of them', () => {
    const tables = withRows(wholeLedger, 'Batches', [
      'B9',
      '2024-03-01',
      'Plain',
      90,
      90,
      'posted',
    ]);
    expect(check(tables).map(({ kind, repair }) => [kind, repair])).toEqual([
      ['batch without ledger lines', undefined],
    ]);
  });
});

describe('lines that stand twice', () => {
  it('are found in a batch and taken back', () => {
    const again = (wholeLedger['LedgerLines']?.[1] ?? []).map((cell, at) =>
      at === 0 ? 'X1' : cell,
    );
    const tables = withRows(wholeLedger, 'LedgerLines', again);
    const twice = check(tables).find(({ kind }) => kind === 'ledger line written twice');
    expect(twice?.about).toBe('X1');
    expect(kinds(repaired(tables, twice?.repair))).toEqual([]);
  });

  it('are found by an id that was numbered anew, and elsewhere are two lines', () => {
    const sale = (entry: string): Cell[] =>
      ['2024-02-02', 'sold', 'Plain', -1, 'B1', -9, '', '', ''].reduce<Cell[]>(
        (row, cell) => [...row, cell],
        [entry],
      );
    expect(kinds(withRows(wholeLedger, 'LedgerLines', sale('S2'), sale('S3')))).toEqual([]);
    const tables = withRows(wholeLedger, 'LedgerLines', sale('S2'), sale('S2.2'));
    expect(kinds(tables)).toEqual([['ledger line written twice', 'S2.2']]);
    expect(kinds(repaired(tables, check(tables)[0]?.repair))).toEqual([]);
  });

  it('are found in Lots, and counted out at what they cost', () => {
    const tables = withRows(wholeLedger, 'Lots', ['L1.2', 'Clear base', '2024-01-01', 500, 50]);
    const [finding, ...others] = check(tables);
    expect(others).toEqual([]);
    expect(finding).toMatchObject({ kind: 'lot written twice', about: 'L1.2' });
    const [move] = finding?.repair?.moves ?? [];
    expect([move?.quantity.toNumber(), move?.value?.toNumber()]).toEqual([-500, -50]);
    expect(kinds(repaired(tables, finding?.repair))).toEqual([]);
  });
});

describe('a lot used before it came', () => {
  it('has its uses moved to the day it came', () => {
    const tables = withCell(wholeLedger, 'Lots', 1, 'Received', '2024-02-02');
    const after = repaired(tables, check(tables)[0]?.repair);
    expect(kinds(after)).toEqual([]);
  });

  it('keeps a Value that is blank blank', () => {
    const early = withCell(wholeLedger, 'Lots', 1, 'Received', '2024-02-02');
    const moves = check(withCell(early, 'LedgerLines', 1, 'Value', '')).find(
      ({ kind }) => kind === 'lot used before it came',
    )?.repair?.moves;
    expect(moves?.find(({ reason }) => reason === 'used')?.value).toBeUndefined();
    expect(moves).toHaveLength(2);
  });
});

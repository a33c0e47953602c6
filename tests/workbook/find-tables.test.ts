import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findTables } from '../../src/workbook/find-tables.ts';
import { smallWorkshop } from '../taskpane/small-workshop.ts';

const moves = smallWorkshop.filter(({ name }) => name === 'LedgerLines');
const named = (name: string, headers: readonly string[]) => ({ name, headers, rows: [] });

describe('findTables', () => {
  it.each([
    [
      'our name before another',
      moves.map((table) => ({ ...table, name: 'Moves 2025' })),
      'LedgerLines',
    ],
    [
      'more known headers before fewer',
      [named('Notes', ['Entry', 'When', 'Reason', 'Material', 'Quantity'])],
      'LedgerLines',
    ],
    [
      'one that lacks a needed header not at all',
      [named('Moves2', ['Entry', 'When'])],
      'LedgerLines',
    ],
  ])('takes %s, in whatever order they stand', (_, others, expected) => {
    fc.assert(
      fc.property(fc.shuffledSubarray([...others, ...moves], { minLength: 2 }), (all) => {
        expect(findTables(all).get('moves')?.name).toBe(expected);
      }),
    );
  });

  it('leaves tables of none of our headers alone', () => {
    expect(findTables([named('Friends', ['Name', 'Birthday'])]).size).toBe(0);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tableData } from '../support/small-book.ts';
import { anyChange } from './any-change.ts';
import { changeCases } from './change-cases.ts';
import { inExcel, inMemory, inReadCells } from './change-hosts.ts';
import { holdCase } from './hold-case.ts';

describe('a change in tables of plain cells', () => {
  const plain = changeCases.filter(({ formulas }) => formulas === undefined);

  it.each(plain)('$name', (one) => holdCase(inMemory, one));
});

describe('a change through Excel’s own client', () => {
  it.each(changeCases)('$name', (one) => holdCase(inExcel, one));
});

describe('a change in the workbench before its grid is there', () => {
  it.each(changeCases)('$name', (one) => holdCase(inReadCells, one));
});

describe('any change', () => {
  it('comes to the same in the workbench before its grid is there', () =>
    fc.assert(
      fc.asyncProperty(anyChange, async ([tables, change]) => {
        expect(await inReadCells(tables, [], change)).toEqual(await inMemory(tables, [], change));
      }),
      { numRuns: 500 },
    ));

  it('comes to the same in both, the first time and the second', () =>
    fc.assert(
      fc.asyncProperty(anyChange, async ([tables, change]) => {
        expect(await inExcel(tables, [], change)).toEqual(await inMemory(tables, [], change));
      }),
      { numRuns: 500 },
    ));

  it('adds no row a second time, and leaves the tables as they are where it says so', () =>
    fc.assert(
      fc.asyncProperty(anyChange, async ([tables, change]) => {
        const { said, tables: after, tablesAgain } = await inMemory(tables, [], change);
        if (said.kind !== 'applied') expect(after).toEqual(tableData(tables));
        const heights = after.map(({ rows }) => rows.length);
        const cleared = (change.removals ?? []).length > 0;
        if (!cleared) expect(tablesAgain.map(({ rows }) => rows.length)).toEqual(heights);
      }),
      { numRuns: 500 },
    ));
});

import { describe, expect, it } from 'vitest';
import { holdsExactly, saysTheSame, whyUnwritable } from '../../../src/workbook/write/same-cell.ts';

describe('two cells', () => {
  it.each([
    [0.1 + 0.2, 0.3, true, true],
    [1.1, 1.1000001, false, false],
    // A cell keeps 15 digits: what binary adds beyond them is no difference, the fifteenth is one.
    [1.23456789012346, 1.234567890123457, true, true],
    [123456789012345, 123456789012346, false, false],
    [0, -0, true, true],
    [0, 1e-15, false, false],
    ['1', 1, true, false],
    [' 0.30', 0.1 + 0.2, true, false],
    ['1 g', 1, false, false],
    ['', 0, false, false],
    ['', '', true, true],
    ['Teal', 'Teal ', true, false],
    ['Teal', 'teal', false, false],
    [true, 'TRUE', true, false],
    [true, 1, false, false],
  ])('%j and %j say the same: %s; hold exactly the same: %s', (one, other, same, exactly) => {
    expect([saysTheSame(one, other), saysTheSame(other, one)]).toEqual([same, same]);
    expect([holdsExactly(one, other), holdsExactly(other, one)]).toEqual([exactly, exactly]);
  });
});

describe('what no cell can hold', () => {
  it.each([
    [Number.POSITIVE_INFINITY, 'is not a number a cell can hold'],
    [Number.NaN, 'is not a number a cell can hold'],
    // https://support.microsoft.com/office/1672b34d-7043-467e-8e27-269d656771c3: 32,767 characters
    ['x'.repeat(32_768), 'is longer than the 32767 characters a cell can hold'],
    ['x'.repeat(32_767), undefined],
    [0, undefined],
  ])('%#', (cell, why) => {
    expect(whyUnwritable(cell)).toBe(why);
  });
});

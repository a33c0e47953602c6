import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { asWritten, sameCell, whyUnwritable } from '../../../src/hosts/excel/cell-text.ts';
import { asTyped } from './host/cells.ts';

describe('a cell as written', () => {
  it('comes back exactly, whatever it holds', () => {
    const cells = fc.oneof(
      fc.string({ unit: 'grapheme', minLength: 1 }),
      fc.stringMatching(/^[=+\-@'0-9./ TRUEFALSEe]{1,8}$/),
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.boolean(),
      fc.constant(''),
    );
    fc.assert(
      fc.property(cells, (cell) => {
        expect(asTyped(asWritten(cell))).toBe(cell);
      }),
    );
  });

  it('leaves plain words bare, so that they look as a person typed them', () => {
    expect(['Teal', 'Lantern Quay', 'sweet orange', 'Öl'].map(asWritten)).toEqual([
      'Teal',
      'Lantern Quay',
      'sweet orange',
      'Öl',
    ]);
  });
});

describe('a cell read back', () => {
  it.each([
    [0.1 + 0.2, 0.3, true],
    [1.1, 1.1000001, false],
    [0, 0, true],
    [0, 1e-15, false],
    ['1', 1, false],
    ['Teal', 'Teal', true],
    ['Teal', 'teal', false],
    [true, true, true],
  ])('%j written and %j read: the same is %s', (written, read, same) => {
    expect(sameCell(written, read)).toBe(same);
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

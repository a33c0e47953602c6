import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { asWritten, isFormula } from '../../../src/hosts/excel/cell-text.ts';
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

describe('a formula', () => {
  it.each([
    ['=SUM(A1:A2)', 3, true],
    ['=SUM(A1:A2)', '', true],
    // A text that looks like one is kept as text, and handed over as it is.
    ['=SUM(A1:A2)', '=SUM(A1:A2)', false],
    [3, 3, false],
    ['Teal', 'Teal', false],
    ['', '', false],
  ])('%j over %j: %s', (formula, value, is) => {
    expect(isFormula(formula, value)).toBe(is);
  });
});

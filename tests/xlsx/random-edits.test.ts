import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cellName } from '../../src/xlsx/address.ts';
import type { CellEdit } from '../../src/xlsx/image.ts';
import { missingEdit } from '../../src/xlsx/verify.ts';
import { writeWorkbook } from '../../src/xlsx/write/write-workbook.ts';
import { sample } from './sample.ts';
import { imageOf, patchedBytes } from './support.ts';

const original = writeWorkbook(sample);
const before = imageOf(original);

const value = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 30 }),
  fc.string({
    unit: fc.constantFrom(
      '=',
      '_',
      'x',
      '0',
      'D',
      ' ',
      '\n',
      '\r',
      '<',
      '&',
      '"',
      '\ud83e',
      '\uffff',
    ),
    maxLength: 12,
  }),
  fc.double({ noNaN: true, noDefaultInfinity: true }).map((number) => (number === 0 ? 0 : number)),
  fc.integer(),
  fc.boolean(),
  fc.constant(''),
);
const formula = fc.constantFrom(
  '=A1+1',
  '=POUR.ONHAND("a",Book)',
  '=SUM(Materials[Pack price])',
  '=XLOOKUP(1,A:A,B:B)',
);
/** Below and right of everything in the sample, and over its plain cells. */
const place = fc.record({ row: fc.integer({ min: 60, max: 90 }), column: fc.nat(12) });
const edit: fc.Arbitrary<CellEdit> = fc.oneof(
  fc.record({ place, value }).map(({ place: at, value: held }) => ({ ...at, value: held })),
  fc
    .record({ place, value: fc.integer(), formula })
    .map((each) => ({ ...each.place, value: each.value, formula: each.formula })),
);

describe('random edits', () => {
  it('read back equal, and leave every other cell as it was', () => {
    fc.assert(
      fc.property(
        fc.array(edit, { maxLength: 25 }),
        fc.array(edit, { maxLength: 25 }),
        (first, second) => {
          const sheet = (cells: readonly CellEdit[]) => [{ sheet: 'Answers', cells, tables: [] }];
          const once = patchedBytes(original, sheet(first));
          const twice = patchedBytes(once, sheet(second));
          const after = imageOf(twice);
          const last = new Map(
            [...first, ...second].map((each) => [cellName(each.row, each.column), each]),
          );
          expect(missingEdit(after, sheet([...last.values()]))).toBeUndefined();
          const touched = ({ row, column }: { row: number; column: number }) =>
            last.has(cellName(row, column));
          for (const [index, was] of before.sheets.entries()) {
            const cells = after.sheets[index]?.cells.filter(
              (cell) => index !== 1 || !touched(cell),
            );
            expect(cells).toEqual(was.cells);
          }
        },
      ),
      { numRuns: 150 },
    );
  });

  it('in one step or in two give the same cells', () => {
    fc.assert(
      fc.property(
        fc.array(edit, { maxLength: 12 }),
        fc.array(edit, { maxLength: 12 }),
        (first, second) => {
          const sheet = (cells: readonly CellEdit[]) => [{ sheet: 'Answers', cells, tables: [] }];
          const apart = imageOf(patchedBytes(patchedBytes(original, sheet(first)), sheet(second)));
          const together = imageOf(patchedBytes(original, sheet([...first, ...second])));
          expect(together.sheets).toEqual(apart.sheets);
        },
      ),
      { numRuns: 80 },
    );
  });
});

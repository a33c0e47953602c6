import fc from 'fast-check';
import { expect, it } from 'vitest';
import { contains } from '../../src/xlsx/address.ts';
import type { CellImage, RangeImage } from '../../src/xlsx/image.ts';
import { MAX_COLUMNS, MAX_ROWS } from '../../src/xlsx/limits.ts';
import { withoutSpilled } from '../../src/xlsx/read/spilled-cells.ts';

/** Few enough lines that cells and ranges meet, and the sheet's last ones. */
const line = (end: number) => fc.oneof(fc.nat(8), fc.constantFrom(end - 2, end - 1));
const cells = fc.array(
  fc.record(
    {
      row: line(MAX_ROWS),
      column: line(MAX_COLUMNS),
      value: fc.constant('x'),
      style: fc.nat(1),
      formula: fc.constant('=A1'),
    },
    { requiredKeys: ['row', 'column', 'value', 'style'] },
  ),
  { maxLength: 40 },
) as fc.Arbitrary<CellImage[]>;
const ranges = fc.array(
  fc
    .tuple(line(MAX_ROWS), line(MAX_ROWS), line(MAX_COLUMNS), line(MAX_COLUMNS))
    .map(([row, otherRow, column, otherColumn]) => ({
      startRow: Math.min(row, otherRow),
      endRow: Math.max(row, otherRow),
      startColumn: Math.min(column, otherColumn),
      endColumn: Math.max(column, otherColumn),
    })),
  { maxLength: 6 },
);

it('takes the values out of cells that a neighbour’s result covers, and no others', () => {
  fc.assert(
    fc.property(cells, ranges, (sheet, spills) => {
      const expected = sheet.flatMap((cell) => {
        const isCovered = spills.some((range) => contains(range, cell.row, cell.column));
        if (!isCovered || cell.formula !== undefined) return [cell];
        return cell.style === 0 ? [] : [{ ...cell, value: '' }];
      });
      expect(withoutSpilled(sheet, spills)).toEqual(expected);
    }),
  );
});

it('looks no more often at the ranges than there are cells and ranges together, some times over', () => {
  const [cellCount, rangeCount] = [10_000, 100];
  let looks = 0;
  const counted = (range: RangeImage): RangeImage =>
    new Proxy(range, {
      get(target, key: keyof RangeImage) {
        looks += 1;
        return target[key];
      },
    });
  // All ranges over all rows, side by side: none is left behind before the last cell.
  const spills = Array.from({ length: rangeCount }, (_, column) =>
    counted({ startRow: 0, endRow: MAX_ROWS - 1, startColumn: column, endColumn: column }),
  );
  const beside = Array.from({ length: cellCount }, (_, row) => ({
    row,
    column: 200,
    value: 'x',
    style: 0,
  }));
  expect(withoutSpilled(beside, spills)).toHaveLength(cellCount);
  expect(looks).toBeLessThan(20 * (cellCount + rangeCount));
});

import { serializeRangeWithSheet } from '@univerjs/preset-sheets-core';
import type { RangeImage } from '../../../xlsx/image.ts';

/** A cell's place in the grid. */
export interface CellPlace {
  readonly sheetId: string;
  readonly row: number;
  readonly column: number;
}

/** The places of a matrix by row and column. */
export function placesOf(
  sheetId: string,
  matrix: Readonly<Record<number, Readonly<Record<number, unknown>> | null | undefined>>,
): CellPlace[] {
  return Object.entries(matrix).flatMap(([row, columns]) =>
    Object.keys(columns ?? {}).map((column) => ({
      sheetId,
      row: Number(row),
      column: Number(column),
    })),
  );
}

/** Reads a range row by row. */
export function rowsIn<T>(range: RangeImage, read: (row: number, column: number) => T): T[][] {
  return Array.from({ length: range.endRow - range.startRow + 1 }, (_, row) =>
    Array.from({ length: range.endColumn - range.startColumn + 1 }, (__, column) =>
      read(range.startRow + row, range.startColumn + column),
    ),
  );
}

/** A range of a sheet as a formula writes it, such as "'Back room'!$A$1:$B$2". */
export const absolute = (sheet: string, range: RangeImage): string =>
  // 3 = both row and column absolute.
  serializeRangeWithSheet(sheet, { ...range, startAbsoluteRefType: 3, endAbsoluteRefType: 3 });

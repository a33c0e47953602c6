import type { RangeImage } from '../../../xlsx/image.ts';

/** A cell's place in the workbook. */
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

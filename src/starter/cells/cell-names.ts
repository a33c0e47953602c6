/** "B3" for row 2, column 1; with "$" as `fixed`, "$B$3". */
export function cellAt(row: number, column: number, fixed: '$' | '' = ''): string {
  return `${fixed}${columnLetters(column)}${fixed}${String(row + 1)}`;
}

export interface CellRange {
  readonly startRow: number;
  readonly startColumn: number;
  readonly endRow: number;
  readonly endColumn: number;
}

/** "B3:D9". */
export function rangeAt(range: CellRange, fixed: '$' | '' = ''): string {
  const first = cellAt(range.startRow, range.startColumn, fixed);
  return `${first}:${cellAt(range.endRow, range.endColumn, fixed)}`;
}

/** Our sheets stay within A to ZZ. */
function columnLetters(column: number): string {
  const last = String.fromCharCode(65 + (column % 26));
  return column < 26 ? last : `${String.fromCharCode(64 + Math.floor(column / 26))}${last}`;
}

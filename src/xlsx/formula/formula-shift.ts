import { columnIndex, columnName } from '../address.ts';
import { rewriteCode } from './formula-mask.ts';
import { MAX_COLUMNS, MAX_ROWS } from '../limits.ts';

const CELL = /(?<![\w.$])(\$?)([A-Z]{1,3})(\$?)([1-9]\d{0,6})(?![\w(.!])/gi;
const COLUMNS = /(?<![\w.$:])(\$?)([A-Z]{1,3}):(\$?)([A-Z]{1,3})(?![\w(.!:])/gi;
const ROWS = /(?<![\w.$:])(\$?)([1-9]\d{0,6}):(\$?)([1-9]\d{0,6})(?![\w(.!:])/g;

/**
 * A stored formula moved by whole rows and columns, as when a file keeps one shared formula for many
 * cells. References that leave the sheet become #REF!.
 */
export function shiftFormula(stored: string, rows: number, columns: number): string {
  if (rows === 0 && columns === 0) return stored;
  return rewriteCode(stored, (code) =>
    code
      .replace(CELL, (_m, lockColumn: string, column: string, lockRow: string, row: string) => {
        const to = [movedColumn(column, lockColumn, columns), movedRow(row, lockRow, rows)];
        return to.includes(undefined) ? '#REF!' : `${lockColumn}${to[0]}${lockRow}${to[1]}`;
      })
      .replace(COLUMNS, (_m, lockA: string, a: string, lockB: string, b: string) => {
        const to = [movedColumn(a, lockA, columns), movedColumn(b, lockB, columns)];
        return to.includes(undefined) ? '#REF!' : `${lockA}${to[0]}:${lockB}${to[1]}`;
      })
      .replace(ROWS, (_m, lockA: string, a: string, lockB: string, b: string) => {
        const to = [movedRow(a, lockA, rows), movedRow(b, lockB, rows)];
        return to.includes(undefined) ? '#REF!' : `${lockA}${to[0]}:${lockB}${to[1]}`;
      }),
  );
}

function movedColumn(name: string, lock: string, by: number): string | undefined {
  const column = columnIndex(name) + (lock ? 0 : by);
  return column >= 0 && column < MAX_COLUMNS ? columnName(column) : undefined;
}

function movedRow(row: string, lock: string, by: number): string | undefined {
  const moved = Number(row) + (lock ? 0 : by);
  return moved >= 1 && moved <= MAX_ROWS ? String(moved) : undefined;
}

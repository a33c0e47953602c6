import type { Cell } from '../../../../src/workbook/port.ts';

/** A formula with the value it had when it was last worked out. */
export interface FormulaCell {
  readonly formula: string;
  value: Cell;
}

/** A cell as Excel keeps it. */
export type Kept = Cell | FormulaCell;

/** What a cell shows. */
export const shown = (kept: Kept | undefined): Cell =>
  typeof kept === 'object' ? kept.value : (kept ?? '');

/** What Excel makes of a value handed to it, which it reads as if a person typed it. */
export function asTyped(cell: Cell): Kept {
  if (typeof cell !== 'string') return cell;
  if (cell.startsWith("'")) return cell.slice(1);
  if (/^[=+\-@]/.test(cell) && !/^[+-]?[\d.]+$/.test(cell)) return { formula: cell, value: 0 };
  if (/^(true|false)$/i.test(cell)) return cell.toLowerCase() === 'true';
  if (cell.trim() !== '' && Number.isFinite(Number(cell))) return Number(cell);
  const day = /^\d{1,4}[-/]\d{1,2}([-/]\d{1,4})?$/.test(cell) ? Date.parse(cell) : Number.NaN;
  return Number.isNaN(day) ? cell : Math.floor(day / 86_400_000) + 25_569;
}

import type { Cell } from '../../workbook/port.ts';
import type { Formula } from './formula.ts';
import type { CellFormat, Role, StarterCell } from './sheet.ts';

/** Shorthand for a cell of the sheets that answer. */
export const cell = (
  row: number,
  column: number,
  holds: Cell | Formula,
  role: Role,
  format?: CellFormat,
): StarterCell => ({
  row,
  column,
  holds,
  look: format === undefined ? { role } : { role, format },
});

/** A row of headers from a column on, each with the format of what stands below. */
export const headerCells = (
  row: number,
  column: number,
  headers: readonly (readonly [text: string, format: CellFormat])[],
): StarterCell[] =>
  headers.map(([text, format], index) => cell(row, column + index, text, 'header', format));

/** How every sheet that answers begins: its title, and below it what it is for. */
export const titleCells = (title: string, note: string): StarterCell[] => [
  cell(0, 0, title, 'title'),
  cell(1, 0, note, 'note'),
];

/** One question to the maker: its words in the first column, and the cell to fill in. */
export const inputCells = (
  row: number,
  column: number,
  label: string,
  holds: Cell | Formula,
  format: CellFormat,
): StarterCell[] => [cell(row, 0, label, 'label'), cell(row, column, holds, 'input', format)];

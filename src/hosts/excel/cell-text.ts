import type { Cell } from '../../workbook/port.ts';

/** Words Excel would keep as they are in any language: letters first, no digit, no sign. */
const PLAIN_WORDS = /^\p{L}[\p{L} ]*$/u;

/**
 * What to hand Excel so that the cell holds exactly `cell`. Excel reads a text as if it were typed,
 * so "=…", "1/2", "007" or "TRUE" would change; a leading apostrophe keeps it as text.
 */
export function asWritten(cell: Cell): Cell {
  if (typeof cell !== 'string' || cell === '') return cell;
  const staysAsItIs = PLAIN_WORDS.test(cell) && !/^(true|false)$/i.test(cell);
  return staysAsItIs ? cell : `'${cell}`;
}

/** Whether a cell holds a formula: of any other, Excel hands over the value as its formula. */
export const isFormula = (formula: Cell, value: Cell): boolean =>
  typeof formula === 'string' && formula.startsWith('=') && formula !== value;

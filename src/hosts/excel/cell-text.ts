import type { Cell } from '../../workbook/port.ts';

/** Excel's own limit for the text in one cell. */
const LONGEST_TEXT = 32_767;

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

/** Why Excel could not hold this cell, as the end of a sentence, or undefined if it can. */
export function whyUnwritable(cell: Cell): string | undefined {
  if (typeof cell === 'number' && !Number.isFinite(cell)) return 'is not a number a cell can hold';
  if (typeof cell === 'string' && cell.length > LONGEST_TEXT) {
    return `is longer than the ${LONGEST_TEXT} characters a cell can hold`;
  }
  return undefined;
}

/** Whether a cell read back from Excel is the one written; numbers may lose a binary digit or two. */
export function sameCell(written: Cell, read: Cell): boolean {
  if (typeof written === 'number' && typeof read === 'number') {
    return Math.abs(written - read) <= 1e-12 * Math.max(Math.abs(written), Math.abs(read));
  }
  return written === read;
}

import { exact } from '../../domain/kernel/exact.ts';
import { isNumberAsText, nameKey } from '../../domain/kernel/names.ts';
import type { Cell } from '../port.ts';

/** A workbook's own limit for the text in one cell. */
const LONGEST_TEXT = 32_767;

/** Why no workbook could hold this cell, as the end of a sentence, or undefined if it can. */
export function whyUnwritable(cell: Cell): string | undefined {
  if (typeof cell === 'number' && !Number.isFinite(cell)) return 'is not a number a cell can hold';
  if (typeof cell === 'string' && cell.length > LONGEST_TEXT) {
    return `is longer than the ${String(LONGEST_TEXT)} characters a cell can hold`;
  }
  return undefined;
}

/** Whether a cell holds the very value: numbers in their 15 digits, texts letter for letter. */
export const holdsExactly = (there: Cell, value: Cell): boolean =>
  there === value ||
  (typeof there === 'number' && typeof value === 'number' && isSameNumber(there, value));

/**
 * Whether two cells say the same of a row that stands already: blanks around a text don't count, nor
 * whether a number or a truth is kept as text.
 */
export function saysTheSame(one: Cell, other: Cell): boolean {
  if (typeof one === 'string' && typeof other === 'string') return one.trim() === other.trim();
  const [first, second] = [numberIn(one), numberIn(other)];
  if (first !== undefined && second !== undefined) return isSameNumber(first, second);
  return nameKey(String(one)) === nameKey(String(other));
}

function numberIn(cell: Cell): number | undefined {
  if (typeof cell === 'number') return cell;
  return isNumberAsText(cell) ? Number(cell) : undefined;
}

/** A value that no cell can hold is refused before, so it is the same as nothing here. */
const isSameNumber = (one: number, other: number): boolean =>
  one === other || (Number.isFinite(one) && Number.isFinite(other) && exact(one).eq(exact(other)));

import type { Failures } from './failures.ts';
import type { CellPlace } from './places.ts';
import type { Content } from './sheet-cells.ts';

/** What the selected cell has to say: its address, its error and why, "" when it has no error. */
export function messageOf(place: CellPlace, content: Content, failures: Failures): string {
  if (!isError(content.value)) return '';
  const sentences = failures.of(place);
  const why =
    sentences.at(-1) ?? (content.formula === undefined ? undefined : NATIVE[String(content.value)]);
  return why === undefined
    ? ''
    : `${addressOf(place.row, place.column)} shows ${String(content.value)}: ${why}`;
}

/** "B7" for row 6, column 1. */
export function addressOf(row: number, column: number): string {
  let letters = '';
  for (let left = column + 1; left > 0; left = Math.floor((left - 1) / 26)) {
    letters = String.fromCharCode(65 + ((left - 1) % 26)) + letters;
  }
  return letters + String(row + 1);
}

const isError = (value: unknown): boolean =>
  typeof value === 'string' && Object.hasOwn(NATIVE, value);

/** For errors that no function of ours explains. */
const NATIVE: Readonly<Record<string, string>> = {
  '#VALUE!': 'the formula got text where it needs a number, or asks a cell with an error.',
  '#N/A': 'the formula finds nothing to answer with.',
  '#DIV/0!': 'the formula divides by nothing.',
  '#NAME?': 'the workbench does not know a name or function in this formula; Excel may.',
  '#REF!': 'the formula asks a cell that is no longer there.',
  '#NUM!': 'the number is too large, or there is no such number.',
  '#SPILL!': 'the answer needs more cells than are free: clear those below and to the right.',
  '#CALC!': 'the formula has nothing to calculate.',
  '#NULL!': 'the two ranges have no cell in common.',
};

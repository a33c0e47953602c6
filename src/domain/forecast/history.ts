import { isNumberAsText, NUMBER_AS_TEXT, quoted } from '../kernel/names.ts';
import { answer, notYet, type Result, wrong } from '../kernel/result.ts';

/**
 * Reads a history from cells, one a period, oldest first. A blank between figures is a period in which
 * nothing was sold. Blanks at either end are a gap: nobody can tell "nothing sold" from "not lived yet".
 */
export function readHistory(cells: readonly (string | number | boolean)[]): Result<number[]> {
  const filled = cells.flatMap((cell, index) => (isBlank(cell) ? [] : [index]));
  const first = filled[0];
  const last = filled[filled.length - 1];
  if (first === undefined || last === undefined) {
    return notYet('history is blank. Give one figure for each period, oldest first.');
  }
  const values: number[] = [];
  for (const [index, cell] of cells.entries()) {
    if (isBlank(cell)) {
      values.push(0);
      continue;
    }
    const trouble = troubleWith(cell);
    if (trouble !== undefined) return wrong(`Value ${index + 1} of history is ${trouble}`);
    values.push(Number(cell));
  }
  if (first > 0) return gap('begins', first);
  if (last < cells.length - 1) return gap('ends', cells.length - 1 - last);
  return answer(values);
}

const isBlank = (cell: string | number | boolean): boolean =>
  typeof cell === 'string' && cell.trim() === '';

function troubleWith(cell: string | number | boolean): string | undefined {
  if (typeof cell !== 'number' || !Number.isFinite(cell)) {
    return isNumberAsText(cell)
      ? `${quoted(cell)}, ${NUMBER_AS_TEXT}.`
      : `${quoted(cell)}, which is not a number. Give the figures alone, without headers.`;
  }
  return cell < 0 ? `${cell}. Sales are 0 or more.` : undefined;
}

function gap(where: 'begins' | 'ends', blanks: number): Result<never> {
  const cells = blanks === 1 ? 'a blank cell' : `${blanks} blank cells`;
  return wrong(`history ${where} with ${cells}. Leave them out, or type 0 where nothing was sold.`);
}

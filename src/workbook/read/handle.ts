import { type Column, isBlankIn } from '../column.ts';
import { columnPrint, type Fingerprint, hex, RowPrints, together } from './fingerprint.ts';
import type { RecognisedTable } from './recognise.ts';

/** The text that names tables by a fingerprint of what their known columns hold. */
export function handleOf(prints: readonly Fingerprint[]): string {
  return `book ${hex(prints.reduce(together, { high: 0, low: 0 }))}`;
}

/** The fingerprint of a table. Neither the order of rows nor of columns changes it, nor how its blanks came. */
export function printOf({ kind, position, columns, range }: RecognisedTable): Fingerprint {
  const prints = new RowPrints(range.length - 1);
  for (const [key, at] of position) {
    const print = columnPrint(kind, key);
    const column = columns[key] as Column<unknown>;
    for (let row = 1; row < range.length; row += 1) {
      const cell = range[row]?.[at];
      if (!isBlankIn(column, cell)) prints.addCell(row - 1, print, cell);
    }
  }
  return prints.total();
}

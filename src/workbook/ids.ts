import { nameKey } from '../domain/kernel/names.ts';
import type { Cell } from './port.ts';

/** The form in which two cells hold the same id, the same in every host; "" where there is none. */
export const idKey = (cell: Cell | undefined): string => nameKey(String(cell ?? ''));

/** From a table's id column, by `idKey`: the body rows that hold each id, from above. */
export function rowsById(
  column: readonly (Cell | undefined)[],
): ReadonlyMap<string, readonly number[]> {
  const rows = new Map<string, number[]>();
  column.forEach((cell, row) => {
    const id = idKey(cell);
    if (id === '') return;
    const known = rows.get(id);
    if (known === undefined) rows.set(id, [row]);
    else known.push(row);
  });
  return rows;
}

import { nameKey } from '../../domain/kernel/names.ts';
import type { Change, TableData } from '../port.ts';
import { findRows } from './find-rows.ts';
import { holdsExactly } from './same-cell.ts';
import { plainTable } from './with-change.ts';
import { idColumnsOf } from './writable-table.ts';

/**
 * How much of a change stands in the tables: new rows are told by their ids, and where all of them stand
 * it was written whole. What finds no place in the tables doesn't stand.
 */
export function howMuchStands(
  change: Change,
  tables: readonly TableData[],
): 'none' | 'part' | 'all' {
  const wanted = idColumnsOf(change);
  const plain = tables.filter(({ name }) => wanted.has(nameKey(name))).map(plainTable);
  const standing = (part: Partial<Change>): boolean[] => {
    const found = findRows({ appends: [], updates: [], ...part }, plain);
    if (!found.ok) return [false];
    const cells = found.value.cells.flatMap(({ table, at, cells: own }) =>
      [...own].map(([column, value]) => holdsExactly(table.rows[at]?.[column] ?? '', value)),
    );
    return [...found.value.rows.map(({ at }) => at !== undefined), ...cells];
  };
  const rows = change.appends.flatMap((append) => standing({ appends: [append] }));
  if (rows.length > 0 && rows.every(Boolean)) return 'all';
  const cells = [
    ...change.updates.flatMap((update) => standing({ updates: [update] })),
    ...(change.removals ?? []).flatMap((removal) => standing({ removals: [removal] })),
  ];
  const isThere = [...rows, ...cells];
  if (isThere.every(Boolean)) return 'all';
  return isThere.some(Boolean) ? 'part' : 'none';
}

import { nameKey } from '../../domain/kernel/names.ts';
import type { Cell, Removal, Update } from '../port.ts';
import { saysTheSame } from './same-cell.ts';

/**
 * A removal as cells to set. The id is the last of them: a row of which only some are blank is still
 * found by it, and clearing it goes on.
 */
export function clearingOf({ table, idColumn, id, was }: Removal): Update {
  const headers = Object.keys(was).filter((header) => nameKey(header) !== nameKey(idColumn));
  const set = Object.fromEntries([...headers, idColumn].map((header) => [header, '']));
  return { table, idColumn, id, set };
}

/** Why a row may not be cleared: somebody changed it since it was read. Undefined where it is as it was. */
export function whyKept(
  { table, idColumn, id, was }: Removal,
  cellUnder: (header: string) => Cell,
): string | undefined {
  const changed = Object.entries(was).find(([header, cell]) => {
    const now = cellUnder(header);
    return nameKey(header) !== nameKey(idColumn) && now !== '' && !saysTheSame(cell, now);
  });
  if (changed === undefined) return undefined;
  const [header, cell] = changed;
  const before = cell === '' ? 'blank' : String(cell);
  return `${table}, ${idColumn} ${id}: ${header} was ${before} and is ${String(cellUnder(header))} now, perhaps by a partner. Nothing was written; look at that row, then try again.`;
}

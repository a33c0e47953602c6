import { nameKey } from '../../domain/kernel/names.ts';
import { asWritten, sameCell } from './cell-text.ts';
import { columnOf } from './change-plan.ts';
import type { Work } from './change-work.ts';
import type { Found } from './look-into.ts';

/**
 * Takes back what Excel kept of `begun`, in one sync: the cells it set, and the rows it added, told by
 * their ids.
 */
export async function takeBack(
  context: Excel.RequestContext,
  begun: Work,
  now: Found,
): Promise<void> {
  const { located, targets, standing } = now;
  for (const { update, at } of located.updates) {
    const target = targets.get(nameKey(update.table));
    for (const cell of begun.cells.filter((one) => one.update === update)) {
      const column = target === undefined ? undefined : columnOf(target, cell.header);
      if (target === undefined || column === undefined) continue;
      const changed = sameCell(cell.value, standing.values(target, at)[column] ?? '');
      if (changed) standing.cell(target, at, column).values = [[asWritten(cell.before)]];
    }
  }
  for (const { append, at } of located.appends) {
    const target = targets.get(nameKey(append.table));
    const ours = begun.rows.find((rows) => rows.append === append);
    if (target === undefined || ours === undefined) continue;
    const kept = at.flatMap((row, index) => (row !== undefined && ours.adds[index] ? [row] : []));
    for (const rows of standing.rows(target, kept)) rows.delete('Up');
  }
  await context.sync();
}

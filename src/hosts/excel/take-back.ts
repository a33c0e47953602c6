import { addUnder } from '../../domain/kernel/add-under.ts';
import type { RowToAdd, Writes } from '../../workbook/write/plan-change.ts';
import { holdsExactly } from '../../workbook/write/same-cell.ts';
import { columnOf } from '../../workbook/write/writable-table.ts';
import { asWritten } from './cell-text.ts';
import type { Looked } from './look-into.ts';
import { isFilling } from './new-rows.ts';
import type { Target } from './target.ts';

/**
 * Takes back what Excel kept of `begun`, in one sync: the cells it set, and the rows it filled or added,
 * told by their ids.
 */
export async function takeBack(
  context: Excel.RequestContext,
  begun: Writes<Target>,
  now: Looked,
): Promise<void> {
  setBack(begun, now);
  const ours = new Map(begun.rows.map((row) => [row.row, row]));
  const filled = new Map<Target, number[]>();
  const added = new Map<Target, number[]>();
  for (const { row, table, at } of now.found.rows) {
    const mine = ours.get(row);
    if (mine !== undefined && at !== undefined) {
      addUnder(isFilling(mine) ? filled : added, table, at);
    }
  }
  for (const [target, rows] of filled) blank(now, target, rows, begun.rows);
  for (const [target, rows] of added) {
    for (const { range } of now.standing.ranges(target, rows)) range.delete('Up');
  }
  await context.sync();
}

function setBack(begun: Writes<Target>, { found, standing }: Looked): void {
  const rows = new Map(found.cells.map((row) => [row.update, row]));
  for (const cell of begun.cells) {
    const row = rows.get(cell.update);
    const column = row && columnOf(row.table, cell.table.headers[cell.column] ?? '');
    if (row === undefined || column === undefined) continue;
    const isSet = holdsExactly(standing.row(row.table, row.at)[column] ?? '', cell.value);
    if (isSet) standing.cell(row.table, row.at, column).values = [[asWritten(cell.before)]];
  }
}

/** Clears rows that were blank before, in the columns that were written. */
function blank(
  { standing }: Looked,
  target: Target,
  rows: readonly number[],
  begun: readonly RowToAdd<Target>[],
): void {
  const written = new Set(
    begun
      .filter(({ table }) => table.tableId === target.tableId)
      .flatMap(({ table, cells }) =>
        [...cells.keys()].map((column) => columnOf(target, table.headers[column] ?? '')),
      ),
  );
  const cells = target.headers.map((_, column) => (written.has(column) ? '' : null));
  for (const { height, range } of standing.ranges(target, rows)) {
    // The type knows no null; Excel leaves such a cell as it is.
    range.values = Array.from({ length: height }, () => cells);
  }
}

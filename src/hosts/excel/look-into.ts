import { nameKey } from '../../domain/kernel/names.ts';
import type { Change } from '../../workbook/port.ts';
import { locate, type Located, Refusal, type Target, textOf } from './change-plan.ts';
import { type Work, workLeft } from './change-work.ts';
import { readTargets } from './read-targets.ts';
import { readStanding, type RowToRead, type StandingRows } from './standing-rows.ts';

/** What a change meets in the workbook, and what is left of it to write. */
export interface Found {
  readonly located: Located;
  readonly targets: ReadonlyMap<string, Target>;
  readonly standing: StandingRows;
  readonly work: Work | 'already there';
}

/** Reads all that a change touches: as `readTargets`, and one more sync where rows of it stand already. */
export async function lookInto(
  context: Excel.RequestContext,
  change: Change,
): Promise<Found | Refusal> {
  const targets = await readTargets(context, change);
  const located = locate(change, targets);
  if (located instanceof Refusal) return located;
  const standing = await readStanding(context, rowsToRead(located, targets));
  if (standing instanceof Refusal) return standing;
  const work = workLeft(located, targets, standing);
  return work instanceof Refusal ? work : { located, targets, standing, work };
}

/** The rows that hold the change's ids. */
function rowsToRead(located: Located, targets: ReadonlyMap<string, Target>): RowToRead[] {
  const wanted: RowToRead[] = [];
  const want = (table: string, idColumn: string, id: string, row: number | undefined): void => {
    const target = targets.get(nameKey(table));
    if (target !== undefined && row !== undefined) wanted.push({ target, row, idColumn, id });
  };
  for (const { append, at } of located.appends) {
    const { table, idColumn, rows } = append;
    at.forEach((row, index) => want(table, idColumn, textOf(rows[index]?.[idColumn]), row));
  }
  for (const { update, at } of located.updates) {
    want(update.table, update.idColumn, textOf(update.id), at);
  }
  return wanted;
}

import { nameKey } from '../../domain/kernel/names.ts';
import type { Applied, Cell, Change } from '../../workbook/port.ts';
import { asWritten, sameCell } from './cell-text.ts';
import { locate, type Located, Refusal, type Target } from './change-plan.ts';
import { type StandingRow, type Work, workLeft } from './change-work.ts';
import { sentenceOfFault } from './host-fault.ts';
import { readTargets } from './read-targets.ts';

/** Runs a batch against the workbook, as `Excel.run` does. */
export type Run = <T>(batch: (context: Excel.RequestContext) => Promise<T>) => Promise<T>;

const refused = (sentence: string): Applied => ({ kind: 'refused', sentence });

/**
 * Writes a change whole or not at all, in at most five syncs whatever its size: everything is read
 * and checked first, then all writing is queued into the last one.
 */
export async function applyChange(run: Run, change: Change): Promise<Applied> {
  let begun: Work | undefined;
  try {
    return await run(async (context) => {
      const work = await prepare(context, change);
      if (work instanceof Refusal) return refused(work.sentence);
      if (work === 'already there') return { kind: 'already there' };
      begun = work;
      queue(context, work);
      await context.sync();
      return { kind: 'applied' };
    });
  } catch (problem) {
    const sentence = sentenceOfFault(problem);
    return begun === undefined ? refused(sentence) : settle(run, change, begun, sentence);
  }
}

async function prepare(
  context: Excel.RequestContext,
  change: Change,
): Promise<Work | Refusal | 'already there'> {
  const targets = await readTargets(context, change);
  const located = locate(change, targets);
  if (located instanceof Refusal) return located;
  return workLeft(located, targets, await readStanding(context, located, targets));
}

/** Reads the rows that the change's ids already have: no sync where there are none. */
async function readStanding(
  context: Excel.RequestContext,
  located: Located,
  targets: ReadonlyMap<string, Target>,
): Promise<StandingRow> {
  const ranges = new Map<string, Excel.Range>();
  const want = (table: string, row: number | undefined): void => {
    const target = targets.get(nameKey(table));
    if (target === undefined || row === undefined) return;
    ranges.set(
      `${target.name}#${row}`,
      rowOf(context, target, row, 0, target.headers.length).load('values'),
    );
  };
  for (const { append, at } of located.appends) at.forEach((row) => want(append.table, row));
  for (const { update, at } of located.updates) want(update.table, at);
  if (ranges.size > 0) await context.sync();
  return (target, row) => (ranges.get(`${target.name}#${row}`)?.values[0] ?? []) as Cell[];
}

function queue(context: Excel.RequestContext, work: Work): void {
  for (const { target, row, column, value } of work.cells) {
    rowOf(context, target, row, column, 1).values = [[asWritten(value)]];
  }
  for (const { target, values } of work.rows) {
    // The type knows no null; Excel leaves such a cell as the table makes it.
    const rows = values as (string | number | boolean)[][];
    context.workbook.tables.getItem(target.name).rows.add(undefined, rows);
  }
  // With calculation set to manual nothing else would tell the dependents.
  context.workbook.application.calculate('Recalculate');
}

function rowOf(
  context: Excel.RequestContext,
  target: Target,
  row: number,
  column: number,
  width: number,
): Excel.Range {
  const first = context.workbook.tables
    .getItem(target.name)
    .getDataBodyRange()
    .getCell(row, column);
  return width === 1 ? first : first.getResizedRange(0, width - 1);
}

/**
 * After writing broke off, looks what Excel kept: all of it is as good as written; a part is taken
 * back.
 */
async function settle(run: Run, change: Change, work: Work, sentence: string): Promise<Applied> {
  try {
    return await run(async (context) => {
      const targets = await readTargets(context, change);
      const kept = work.rows.flatMap(({ target, idColumn, ids }) =>
        ids.flatMap((id) => {
          const places = targets.get(nameKey(target.name))?.places.get(nameKey(idColumn));
          return (places?.get(id) ?? []).map((row) => ({ target, row }));
        }),
      );
      const rowsToAdd = work.rows.reduce((count, { ids }) => count + ids.length, 0);
      if (rowsToAdd > 0 && kept.length === rowsToAdd) return { kind: 'applied' };
      await takeBack(context, work, kept);
      return refused(sentence);
    });
  } catch {
    return refused(
      `${sentence} Excel then did not say whether a part was kept. Try again: what is there already is never written twice.`,
    );
  }
}

async function takeBack(
  context: Excel.RequestContext,
  work: Work,
  kept: readonly { readonly target: Target; readonly row: number }[],
): Promise<void> {
  const cells = work.cells.map((cell) => ({
    cell,
    range: rowOf(context, cell.target, cell.row, cell.column, 1).load('values'),
  }));
  if (cells.length > 0) await context.sync();
  for (const { cell, range } of cells) {
    const changed = sameCell(cell.value, (range.values[0] as Cell[])[0] ?? '');
    if (changed) range.values = [[asWritten(cell.before)]];
  }
  // From the bottom up, so that no row moves before its turn.
  for (const { target, row } of [...kept].sort((a, b) => b.row - a.row)) {
    context.workbook.tables.getItem(target.name).rows.getItemAt(row).delete();
  }
  if (cells.length > 0 || kept.length > 0) await context.sync();
}

import type { Cell } from '../../workbook/port.ts';
import { asWritten } from './cell-text.ts';
import { Refusal, type Target } from './change-plan.ts';
import type { NewRows, Work } from './change-work.ts';
import type { StandingRows } from './standing-rows.ts';

/** Rows stand under columns they were not meant for, and Excel would not take them back. */
export class Misplaced extends Error {}

/**
 * Writes all that is left of a change in one sync, and has dependents worked out again. Where columns
 * were moved since they were read, takes it all back in a second sync and says so; throws `Misplaced`
 * where that fails.
 */
export async function writeWork(
  context: Excel.RequestContext,
  work: Work,
  standing: StandingRows,
): Promise<Refusal | undefined> {
  const tables = context.workbook.tables;
  // First of all: a column that is gone breaks the batch off before anything is written.
  const columns = work.rows.flatMap((rows) => columnsOf(tables, rows));
  const cells = work.cells.map(({ target, row, column, value }) => {
    const range = standing.cell(target, row, column).load('values');
    range.values = [[asWritten(value)]];
    return range;
  });
  const added = work.rows.map(({ target, values }) =>
    tables
      .getItem(target.tableId)
      // The type knows no null; Excel leaves such a cell as the table makes it.
      .rows.add(undefined, values as (string | number | boolean)[][])
      .getRange()
      .getResizedRange(values.length - 1, 0),
  );
  // With calculation set to manual nothing else would tell the dependents.
  context.workbook.application.calculate('Recalculate');
  await context.sync();

  const moved = columns.find(({ at, column }) => column.index !== at);
  if (moved === undefined) return undefined;
  for (const range of cells) range.values = [[asWritten(cellOf(range))]];
  for (const range of added.reverse()) range.delete('Up');
  const happened = `Columns of ${moved.target.name} were moved just now, perhaps by a partner.`;
  await context.sync().catch((cause: unknown) => {
    throw new Misplaced(
      `${happened} Rows went in under the wrong headers, and Excel did not take them back: delete the last rows of ${moved.target.name}, then try again.`,
      { cause },
    );
  });
  return new Refusal(`${happened} Nothing was kept; try again.`);
}

/** The columns that new rows fill, and where each was when the rows were laid out. */
function columnsOf(
  tables: Excel.TableCollection,
  { target, values }: NewRows,
): { target: Target; at: number; column: Excel.TableColumn }[] {
  return target.headers.flatMap((header, at) =>
    values.every((row) => row[at] === null)
      ? []
      : [
          {
            target,
            at,
            column: tables.getItem(target.tableId).columns.getItem(header).load('index'),
          },
        ],
  );
}

/** What a cell held when the batch reached it: it was read there before it was written. */
const cellOf = (range: Excel.Range): Cell => (range.values[0] as Cell[])[0] ?? '';

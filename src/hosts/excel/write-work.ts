import { idKey } from '../../workbook/ids.ts';
import type { Cell } from '../../workbook/port.ts';
import { asWritten } from './cell-text.ts';
import { columnOf, Refusal, type Target, textOf } from './change-plan.ts';
import type { NewCell, NewRows, Work } from './change-work.ts';
import type { StandingRows } from './standing-rows.ts';

/** Cells stand where they were not meant to be, and Excel would not take them back. */
export class Misplaced extends Error {}

/**
 * Writes all that is left of a change in one sync, and has dependents worked out again. Where columns
 * were moved or rows sorted since they were read, takes it all back in a second sync and says so;
 * throws `Misplaced` where that fails.
 */
export async function writeWork(
  context: Excel.RequestContext,
  work: Work,
  standing: StandingRows,
): Promise<Refusal | undefined> {
  const tables = context.workbook.tables;
  // First of all: a column that is gone breaks the batch off before anything is written.
  const columns = work.rows.flatMap((rows) => columnsOf(tables, rows));
  const cells = work.cells.map((cell) => cellToSet(standing, cell));
  for (const { cell, range } of cells) range.values = [[asWritten(cell.value)]];
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

  const astray = columnAstray(columns) ?? rowAstray(cells, work.rows);
  if (astray === undefined) return undefined;
  for (const { range } of cells) range.values = [[asWritten(cellOf(range))]];
  for (const range of added.reverse()) range.delete('Up');
  await context.sync().catch((cause: unknown) => {
    throw new Misplaced(
      `${astray.happened} ${astray.stays}, and Excel did not take that back: ${astray.mend}, then try again.`,
      { cause },
    );
  });
  return new Refusal(`${astray.happened} Nothing was kept; try again.`);
}

/** What moved under the writing, as pieces of a sentence. */
interface Astray {
  readonly happened: string;
  readonly stays: string;
  readonly mend: string;
}

interface ColumnToFill {
  readonly target: Target;
  readonly at: number;
  readonly column: Excel.TableColumn;
}

function columnAstray(columns: readonly ColumnToFill[]): Astray | undefined {
  const moved = columns.find(({ at, column }) => column.index !== at);
  return moved === undefined
    ? undefined
    : {
        happened: `Columns of ${moved.target.name} were moved just now, perhaps by a partner.`,
        stays: 'Rows went in under the wrong headers',
        mend: `delete the last rows of ${moved.target.name}`,
      };
}

interface CellToSet {
  readonly cell: NewCell;
  /** The id in its row, read before anything is written: a sorted row is another's by then. */
  readonly id: Excel.Range;
  readonly range: Excel.Range;
}

function cellToSet(standing: StandingRows, cell: NewCell): CellToSet {
  const { target, row, column, update } = cell;
  const idColumn = columnOf(target, update.idColumn) ?? -1;
  return {
    cell,
    id: standing.cell(target, row, idColumn).load('values'),
    range: standing.cell(target, row, column).load('values'),
  };
}

function rowAstray(cells: readonly CellToSet[], rows: readonly NewRows[]): Astray | undefined {
  const moved = cells.find(({ cell, id }) => idKey(cellOf(id)) !== idKey(cell.update.id));
  if (moved === undefined) return undefined;
  const { cell, id, range } = moved;
  const grown = rows.map(({ target }) => `, delete the last rows of ${target.name}`);
  return {
    happened: `Rows of ${cell.target.name} were sorted just now, perhaps by a partner.`,
    stays: `${cell.header} of "${textOf(cellOf(id))}" was set instead of "${cell.update.id}"`,
    mend: `set it back to "${textOf(cellOf(range))}"${grown.join('')}`,
  };
}

/** The columns that new rows fill, and where each was when the rows were laid out. */
function columnsOf(tables: Excel.TableCollection, { target, values }: NewRows): ColumnToFill[] {
  const { columns } = tables.getItem(target.tableId);
  return target.headers.flatMap((header, at) =>
    values.every((row) => row[at] === null)
      ? []
      : [{ target, at, column: columns.getItem(header).load('index') }],
  );
}

/** What a cell held when the batch reached it: every cell is read before any is written. */
const cellOf = (range: Excel.Range): Cell => (range.values[0] as Cell[])[0] ?? '';

import { idKey } from '../../workbook/ids.ts';
import type { Cell } from '../../workbook/port.ts';
import type { CellToSet, Writes } from '../../workbook/write/plan-change.ts';
import { asWritten, isFormula } from './cell-text.ts';
import { type NewRows, newRowsOf } from './new-rows.ts';
import type { StandingRows } from './standing-rows.ts';
import type { Target } from './target.ts';

/** Cells stand where they were not meant to be, and Excel would not take them back. */
export class Misplaced extends Error {}

/**
 * Writes all that is left of a change in one sync, and has dependents worked out again. Where columns
 * were moved, or rows sorted or filled, since they were read, takes it all back in a second sync and
 * answers why; throws `Misplaced` where that fails.
 */
export async function writeWork(
  context: Excel.RequestContext,
  work: Writes<Target>,
  standing: StandingRows,
): Promise<string | undefined> {
  const tables = context.workbook.tables;
  const { filling, below } = newRowsOf(work);
  // First of all: a column that is gone breaks the batch off before anything is written.
  const columns = [...filling, ...below].flatMap((rows) => columnsOf(tables, rows));
  const cells = work.cells.map((cell) => cellToSet(standing, cell));
  for (const { cell, range } of cells) range.values = [[asWritten(cell.value)]];
  const filled = filling.flatMap((rows) => rowsToFill(tables, standing, rows));
  for (const { rows, range } of filled) range.values = settable(rows.values);
  const added = below.map(({ target, values }) =>
    tables
      .getItem(target.tableId)
      .rows.add(undefined, settable(values))
      .getRange()
      .getResizedRange(values.length - 1, 0),
  );
  // With calculation set to manual nothing else would tell the dependents.
  context.workbook.application.calculate('Recalculate');
  await context.sync();

  const astray =
    columnAstray(columns) ??
    rowAstray(cells, [...filling, ...below]) ??
    fillAstray(standing, filled);
  if (astray === undefined) return undefined;
  for (const { range } of cells) range.values = [[asWritten(cellOf(range))]];
  for (const fill of filled) fill.range.values = settable(before(fill));
  for (const range of added.reverse()) range.delete('Up');
  await context.sync().catch((cause: unknown) => {
    throw new Misplaced(
      `${astray.happened} ${astray.stays}, and Excel did not take that back: ${astray.mend}, then try again.`,
      { cause },
    );
  });
  return `${astray.happened} Nothing was kept; try again.`;
}

/** The type knows no null; Excel leaves such a cell as it is, or as the table makes it. */
const settable = (values: readonly (readonly (Cell | null)[])[]): Cell[][] => values as Cell[][];

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

interface CellBeforeSet {
  readonly cell: CellToSet<Target>;
  /** The id in its row, read before anything is written: a sorted row is another's by then. */
  readonly id: Excel.Range;
  readonly range: Excel.Range;
}

function cellToSet(standing: StandingRows, cell: CellToSet<Target>): CellBeforeSet {
  const { table, at, column, idColumn } = cell;
  return {
    cell,
    id: standing.cell(table, at, idColumn).load('values'),
    range: standing.cell(table, at, column).load('values'),
  };
}

function rowAstray(cells: readonly CellBeforeSet[], rows: readonly NewRows[]): Astray | undefined {
  const moved = cells.find(({ cell, id }) => idKey(cellOf(id)) !== idKey(cell.update.id));
  if (moved === undefined) return undefined;
  const { cell, id, range } = moved;
  const header = cell.table.headers[cell.column] ?? '';
  const grown = rows.map(({ target }) => `, delete the last rows of ${target.name}`);
  return {
    happened: `Rows of ${cell.table.name} were sorted just now, perhaps by a partner.`,
    stays: `${header.trim()} of "${textOf(cellOf(id))}" was set instead of "${cell.update.id}"`,
    mend: `set it back to "${textOf(cellOf(range))}"${grown.join('')}`,
  };
}

interface FillBeforeSet {
  readonly rows: NewRows;
  /** What stands there, read before it is written. */
  readonly range: Excel.Range;
}

/** Within its table: where a row was taken out meanwhile, the shapes differ and the batch breaks off. */
function rowsToFill(
  tables: Excel.TableCollection,
  standing: StandingRows,
  rows: NewRows,
): FillBeforeSet[] {
  const body = tables.getItem(rows.target.tableId).getDataBodyRange();
  return standing
    .ranges(rows.target, rows.at)
    .map(({ range }) => ({ rows, range: range.getIntersection(body).load('values,formulas') }));
}

function fillAstray(standing: StandingRows, filled: readonly FillBeforeSet[]): Astray | undefined {
  for (const { rows, range } of filled) {
    const { target, at } = rows;
    const stood = (range.formulas as Cell[][]).flatMap((row, down) => {
      const read = standing.formulas(target, at[down] ?? -1);
      return row.filter((cell, column) => cell !== read[column]);
    });
    if (stood.length === 0) continue;
    return {
      happened: `The last rows of ${target.name} were filled or moved just now, perhaps by a partner.`,
      stays: `New rows went over ${stood.map((cell) => `"${textOf(cell)}"`).join(', ')}`,
      mend: `put that back in the last rows of ${target.name}`,
    };
  }
  return undefined;
}

/** What filled rows held when the batch reached them, in the columns that it wrote. */
const before = ({ rows, range }: FillBeforeSet): (Cell | null)[][] =>
  rows.values.map((row, down) =>
    row.map((written, column) => {
      const value = (range.values as Cell[][])[down]?.[column] ?? '';
      const formula = (range.formulas as Cell[][])[down]?.[column] ?? '';
      if (written === null) return null;
      return isFormula(formula, value) ? formula : asWritten(value);
    }),
  );

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

const textOf = (cell: Cell): string => String(cell).trim();

import { nameKey } from '../../domain/kernel/names.ts';
import type { Append, Cell, RowToWrite, Update } from '../../workbook/port.ts';
import { whyKept } from '../../workbook/removal.ts';
import { asWritten, sameCell } from './cell-text.ts';
import type { StandingRows } from './standing-rows.ts';
import { columnOf, type Located, Refusal, type Target, textOf } from './change-plan.ts';

/** Rows to add below a table, in its own column order. */
export interface NewRows {
  readonly append: Append;
  readonly target: Target;
  /** For each row of the append, whether it is one of those to add. */
  readonly adds: readonly boolean[];
  /** null leaves a column to the table itself, such as one it calculates. */
  readonly values: readonly (readonly (Cell | null)[])[];
}

/** One cell to set, and what stands there now. */
export interface NewCell {
  readonly update: Update;
  readonly header: string;
  readonly target: Target;
  readonly row: number;
  readonly column: number;
  /** Part of clearing a whole row. */
  readonly isRemoved: boolean;
  readonly before: Cell;
  readonly value: Cell;
}

/** What is left to write of a change. */
export interface Work {
  readonly rows: readonly NewRows[];
  readonly cells: readonly NewCell[];
}

/** The tables that work writes into. */
export const targetsOf = ({ rows, cells }: Work): Target[] =>
  [...rows, ...cells].map(({ target }) => target);

/**
 * Works out what is left to write, or that all of it stands already, or that an id is taken by a
 * different row.
 */
export function workLeft(
  located: Located,
  targets: ReadonlyMap<string, Target>,
  standing: StandingRows,
): Work | Refusal | 'already there' {
  const rows: NewRows[] = [];
  for (const { append, at } of located.appends) {
    const target = targets.get(nameKey(append.table));
    if (target === undefined) continue;
    const taken = append.rows.find(
      (row, index) => differing(row, target, standing, at[index]) !== undefined,
    );
    if (taken !== undefined) return new Refusal(whyTaken(target.name, append.idColumn, taken));
    const adds = append.rows.map((_, index) => at[index] === undefined);
    const missing = append.rows.filter((_, index) => adds[index]);
    if (missing.length > 0) {
      const values = missing.map((row) => inColumnOrder(target, row));
      rows.push({ append, target, adds, values });
    }
  }
  const kept = whyRowsStay(located, targets, standing);
  if (kept !== undefined) return new Refusal(kept);
  // Cells are set before rows are added, so rows that all stand mean that the cells were set too.
  const rowsAllStand = located.appends.length > 0 && rows.length === 0;
  const cells = rowsAllStand ? [] : cellsLeft(located, targets, standing);
  return rows.length === 0 && cells.length === 0 ? 'already there' : { rows, cells };
}

/** Why a row to clear may not be, or undefined. */
function whyRowsStay(
  { updates }: Located,
  targets: ReadonlyMap<string, Target>,
  standing: StandingRows,
): string | undefined {
  for (const { update, removal, at } of updates) {
    const target = targets.get(nameKey(update.table));
    if (removal === undefined || target === undefined) continue;
    const cells = standing.values(target, at);
    const why = whyKept(removal, (header) => cells[columnOf(target, header) ?? -1] ?? '', sameCell);
    if (why !== undefined) return why;
  }
  return undefined;
}

function cellsLeft(
  located: Located,
  targets: ReadonlyMap<string, Target>,
  standing: StandingRows,
): NewCell[] {
  return located.updates.flatMap(({ update, removal, at }) => {
    const target = targets.get(nameKey(update.table));
    if (target === undefined) return [];
    const isRemoved = removal !== undefined;
    return Object.entries(update.set).flatMap(([header, value]) => {
      const column = columnOf(target, header);
      if (column === undefined) return [];
      const before = standing.values(target, at)[column] ?? '';
      return sameCell(value, before)
        ? []
        : [{ update, header, target, row: at, column, isRemoved, before, value }];
    });
  });
}

/** The first header whose cell in the sheet is not the one to write; undefined for a row not there. */
function differing(
  row: RowToWrite,
  target: Target,
  standing: StandingRows,
  at: number | undefined,
): string | undefined {
  if (at === undefined) return undefined;
  const cells = standing.values(target, at);
  return Object.entries(row).find(([header, cell]) => {
    const column = columnOf(target, header);
    return column !== undefined && !sameCell(cell, cells[column] ?? '');
  })?.[0];
}

const whyTaken = (table: string, idColumn: string, row: RowToWrite): string =>
  `${table} already has a different row with ${idColumn} "${textOf(row[idColumn])}". Nothing was written; look at that row first, then start again.`;

function inColumnOrder(target: Target, row: RowToWrite): (Cell | null)[] {
  const cells = target.headers.map((): Cell | null => null);
  for (const [header, cell] of Object.entries(row)) {
    const column = columnOf(target, header);
    if (column !== undefined) cells[column] = asWritten(cell);
  }
  return cells;
}

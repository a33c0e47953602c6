import { addUnder } from '../../domain/kernel/add-under.ts';
import type { Cell } from '../../workbook/port.ts';
import type { RowToAdd, Writes } from '../../workbook/write/plan-change.ts';
import { asWritten } from './cell-text.ts';
import type { Target } from './target.ts';

/** New rows of one table, one below the other. */
export interface NewRows {
  readonly target: Target;
  /** The body rows that they become. */
  readonly at: readonly number[];
  /** In the table's own column order; null leaves a column to the table itself, such as one it works out. */
  readonly values: readonly (readonly (Cell | null)[])[];
}

/** The rows to write, apart by whether they fill blank rows of their table or go in below it. */
export function newRowsOf({ rows }: Writes<Target>): {
  readonly filling: readonly NewRows[];
  readonly below: readonly NewRows[];
} {
  return {
    filling: byTable(rows.filter(isFilling)),
    below: byTable(rows.filter((row) => !isFilling(row))),
  };
}

/** Whether a row goes into a blank one that stands already. */
export const isFilling = ({ table, at }: RowToAdd<Target>): boolean => at < table.height;

function byTable(rows: readonly RowToAdd<Target>[]): NewRows[] {
  const tables = new Map<Target, RowToAdd<Target>[]>();
  for (const row of rows) addUnder(tables, row.table, row);
  return [...tables].map(([target, mine]) => ({
    target,
    at: mine.map(({ at }) => at),
    values: mine.map(({ cells }) =>
      target.headers.map((_, column): Cell | null => {
        const cell = cells.get(column);
        return cell === undefined ? null : asWritten(cell);
      }),
    ),
  }));
}

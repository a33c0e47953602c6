import type { Column } from './column.ts';

export type Columns = Readonly<Record<string, Column<unknown>>>;

/** A table as the schema describes it. */
export interface TableSpec<C extends Columns = Columns> {
  readonly name: string;
  readonly help: string;
  readonly columns: C;
}

export const table = <C extends Columns>(name: string, help: string, columns: C): TableSpec<C> => ({
  name,
  help,
  columns,
});

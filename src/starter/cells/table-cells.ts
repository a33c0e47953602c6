import type { Cell } from '../../workbook/port.ts';
import { type TableKind, tables } from '../../workbook/schema.ts';
import { rangeAt } from './cell-names.ts';
import type { Workings } from './formula.ts';
import { tableSheets } from './names.ts';

/** The row of the headers on every table's sheet. */
export const HEADER_ROW = 2;

/** More rows than a workshop has: designs, colours or materials are few, lots and batches come by the year. */
const MOST_ROWS = 300;
const MOST_ROWS_OF: Partial<Readonly<Record<TableKind, number>>> = { lots: 5000, batches: 5000 };

/** The cells of one column of a table, with room for rows to come. */
export interface TableColumn {
  readonly text: string;
  readonly work: (from: Workings) => readonly Cell[];
}

/**
 * A column by its sheet's cells and not as `Table[Column]`: the workbench's grid loses the sheet
 * when INDEX looks into a table of another sheet. `first` is its first row, 1 unless told.
 */
export function columnCells<K extends TableKind>(
  kind: K,
  key: keyof (typeof tables)[K]['columns'] & string,
  first = 1,
): TableColumn {
  const { name, columns } = tables[kind];
  const column = Object.keys(columns).indexOf(key);
  const sheet = tableSheets.find((place) => place.kind === kind)?.sheet ?? '';
  const cells = rangeAt(
    {
      startRow: HEADER_ROW + first,
      startColumn: column,
      endRow: HEADER_ROW + (MOST_ROWS_OF[kind] ?? MOST_ROWS),
      endColumn: column,
    },
    '$',
  );
  return {
    text: `'${sheet}'!${cells}`,
    work: (from) =>
      from
        .table(name)
        .slice(first)
        .map((row) => row[column] ?? ''),
  };
}

/** A whole column of a table, however long, for formulas that add up or count. */
export function wholeColumn<K extends TableKind>(
  kind: K,
  key: keyof (typeof tables)[K]['columns'] & string,
): TableColumn {
  const { name, columns } = tables[kind];
  const header = (columns as Readonly<Record<string, { readonly header: string }>>)[key]?.header;
  return { text: `${name}[${header ?? ''}]`, work: columnCells(kind, key).work };
}

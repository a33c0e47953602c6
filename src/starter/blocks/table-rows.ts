import type { Cell, TableData } from '../../workbook/port.ts';
import { type TableKind, tableKinds, tables } from '../../workbook/schema.ts';

/** A row by the schema's column keys; what is left out is blank. */
export type RowOfCells<K extends TableKind> = Readonly<
  Partial<Record<keyof (typeof tables)[K]['columns'], Cell>>
>;

/** Rows for every table of the workbook. */
export type WorkbookRows = { readonly [K in TableKind]: readonly RowOfCells<K>[] };

/** One table with the schema's headers, as a host would hand it over. */
export function tableData<K extends TableKind>(kind: K, rows: readonly RowOfCells<K>[]): TableData {
  const { name, columns } = tables[kind];
  const keys = Object.keys(columns) as (keyof RowOfCells<K>)[];
  return {
    name,
    headers: Object.values(columns).map(({ header }) => header),
    rows: rows.map((row) => keys.map((key) => row[key] ?? '')),
  };
}

/** Every table, in the schema's order. */
export const allTableData = (rows: WorkbookRows): readonly TableData[] =>
  tableKinds.map((kind) => tableData(kind, rows[kind] as readonly RowOfCells<typeof kind>[]));

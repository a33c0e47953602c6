import { cellName, contains, overlaps } from '../address.ts';
import type { RangeImage } from '../image.ts';
import type { CellContent } from './cell-xml.ts';
import type { NewCell, NewSheet, NewStyle, NewTable } from './new-workbook.ts';

/** One cell of a new sheet, from whichever part of its description it came. */
export interface GridCell extends CellContent {
  readonly style: NewStyle | undefined;
  /** True for the further cells of a spilled result. */
  readonly computed: boolean;
}

/** All cells of a new sheet. A table's are made when asked for: a long one would fill the memory with them. */
export interface SheetGrid {
  /** What the cells cover; undefined where there are none. */
  readonly range: RangeImage | undefined;
  /** The rows that hold cells, from above. */
  readonly rows: readonly number[];
  /** A row's cells, from the left. */
  row(row: number): readonly GridCell[];
  at(row: number, column: number): GridCell | undefined;
}

/** The cells of a sheet. Two values for one place are a mistake in the description. */
export function sheetGrid(sheet: NewSheet): SheetGrid {
  const tables = sheet.tables ?? [];
  const single = new Map<number, Map<number, GridCell>>();
  const at = (row: number, column: number) =>
    single.get(row)?.get(column) ?? cellOfTables(tables, row, column);
  const givenTwice = (row: number, column: number) =>
    new Error(`${sheet.name}!${cellName(row, column)} is given twice`);
  const put = (cell: GridCell) => {
    const standing = at(cell.row, cell.column);
    const clash = standing && standing.value !== '' && (cell.value !== '' || cell.computed);
    if (clash) throw givenTwice(cell.row, cell.column);
    const row = single.get(cell.row) ?? new Map<number, GridCell>();
    single.set(cell.row, row.set(cell.column, { ...cell, style: cell.style ?? standing?.style }));
  };
  tables.forEach((table, index) => {
    checkRows(table);
    const under = tables.slice(0, index).find((other) => overlaps(rangeOf(other), rangeOf(table)));
    if (under)
      throw givenTwice(Math.max(under.row, table.row), Math.max(under.column, table.column));
  });
  for (const cell of sheet.cells ?? []) {
    const isBlank = cell.value === '' && cell.formula === undefined;
    if (isBlank && tables.some((table) => contains(rangeOf(table), cell.row, cell.column))) {
      throw new Error(`${sheet.name}!${cellName(cell.row, cell.column)} lies in a table`);
    }
    put({ ...cell, style: cell.style, computed: false });
  }
  for (const cell of sheet.cells ?? []) spilledCells(cell).forEach(put);
  return {
    range: rangeOfAll(tables, single),
    rows: rowsOfAll(tables, single),
    row: (row) => rowOf(tables, row, single.get(row)),
    at,
  };
}

/** The rows a table takes below its header: at least one, as the format demands. */
export function bodyRowCount(table: NewTable): number {
  return Math.max(1, table.rows.length);
}

/** All a table covers, its header included. */
export const rangeOf = (table: NewTable): RangeImage => ({
  startRow: table.row,
  startColumn: table.column,
  endRow: table.row + bodyRowCount(table),
  endColumn: table.column + table.columns.length - 1,
});

function checkRows({ name, columns, rows }: NewTable): void {
  rows.forEach((cells, down) => {
    if (cells.length === columns.length) return;
    throw new Error(`Row ${down + 1} of table ${name} has ${cells.length} cells`);
  });
}

function rowOf(
  tables: readonly NewTable[],
  row: number,
  single: ReadonlyMap<number, GridCell> | undefined,
): readonly GridCell[] {
  const inTables = tables.flatMap((table) => {
    const { startRow, endRow } = rangeOf(table);
    return row < startRow || row > endRow
      ? []
      : table.columns.map((_, across) => cellOfTable(table, row, across));
  });
  if (single === undefined && tables.length === 1) return inTables;
  const others = inTables.filter(({ column }) => !single?.has(column));
  return [...others, ...(single?.values() ?? [])].sort((a, b) => a.column - b.column);
}

function cellOfTables(tables: readonly NewTable[], row: number, column: number) {
  const table = tables.find((each) => contains(rangeOf(each), row, column));
  return table && cellOfTable(table, row, column - table.column);
}

function cellOfTable(table: NewTable, row: number, across: number): GridCell {
  const column = table.column + across;
  const isHeader = row === table.row;
  const cell = isHeader
    ? (table.columns[across]?.header ?? '')
    : (table.rows[row - table.row - 1]?.[across] ?? '');
  const style = isHeader ? table.headerStyle : table.columns[across]?.style;
  return typeof cell === 'object'
    ? { row, column, ...cell, style, computed: false }
    : { row, column, value: cell, style, computed: false };
}

function spilledCells(cell: NewCell): readonly GridCell[] {
  return (cell.spill ?? []).flatMap((values, down) =>
    values.flatMap((value, right) =>
      down === 0 && right === 0
        ? []
        : [
            {
              row: cell.row + down,
              column: cell.column + right,
              value,
              style: undefined,
              computed: true,
            },
          ],
    ),
  );
}

function rowsOfAll(
  tables: readonly NewTable[],
  single: ReadonlyMap<number, unknown>,
): readonly number[] {
  const rows = new Set(single.keys());
  for (const { startRow, endRow } of tables.map(rangeOf)) {
    for (let row = startRow; row <= endRow; row += 1) rows.add(row);
  }
  return [...rows].sort((a, b) => a - b);
}

function rangeOfAll(
  tables: readonly NewTable[],
  single: ReadonlyMap<number, ReadonlyMap<number, unknown>>,
): RangeImage | undefined {
  const ranges = tables.map(rangeOf);
  for (const [row, cells] of single) {
    const columns = [...cells.keys()];
    ranges.push({
      startRow: row,
      startColumn: Math.min(...columns),
      endRow: row,
      endColumn: Math.max(...columns),
    });
  }
  return ranges.length === 0
    ? undefined
    : ranges.reduce((all, each) => ({
        startRow: Math.min(all.startRow, each.startRow),
        startColumn: Math.min(all.startColumn, each.startColumn),
        endRow: Math.max(all.endRow, each.endRow),
        endColumn: Math.max(all.endColumn, each.endColumn),
      }));
}

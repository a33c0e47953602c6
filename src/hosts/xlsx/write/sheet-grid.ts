import { cellName, contains } from '../address.ts';
import type { CellContent } from './cell-xml.ts';
import type { NewCell, NewSheet, NewStyle, NewTable } from './new-workbook.ts';

/** One cell of a new sheet, from whichever part of its description it came. */
export interface GridCell extends CellContent {
  readonly style: NewStyle | undefined;
  /** True for the further cells of a spilled result. */
  readonly computed: boolean;
}

/** All cells of a new sheet, row by row. Two values for one place are a mistake in the description. */
export function sheetGrid(sheet: NewSheet): ReadonlyMap<number, ReadonlyMap<number, GridCell>> {
  const rows = new Map<number, Map<number, GridCell>>();
  const at = (row: number, column: number) => rows.get(row)?.get(column);
  const put = (cell: GridCell) => {
    const standing = at(cell.row, cell.column);
    const clash = standing && standing.value !== '' && (cell.value !== '' || cell.computed);
    if (clash) throw new Error(`${sheet.name}!${cellName(cell.row, cell.column)} is given twice`);
    const row = rows.get(cell.row) ?? new Map<number, GridCell>();
    rows.set(cell.row, row.set(cell.column, { ...cell, style: cell.style ?? standing?.style }));
  };
  for (const table of sheet.tables ?? []) tableCells(table).forEach(put);
  for (const cell of sheet.cells ?? []) {
    if (cell.value === '' && cell.formula === undefined && inTable(sheet, cell)) {
      throw new Error(`${sheet.name}!${cellName(cell.row, cell.column)} lies in a table`);
    }
    put({ ...cell, style: cell.style, computed: false });
  }
  for (const cell of sheet.cells ?? []) spilledCells(cell).forEach(put);
  return rows;
}

/** The rows a table takes below its header: at least one, as the format demands. */
export function bodyRowCount(table: NewTable): number {
  return Math.max(1, table.rows.length);
}

function inTable(sheet: NewSheet, cell: NewCell): boolean {
  return (sheet.tables ?? []).some((table) =>
    contains(
      {
        startRow: table.row,
        startColumn: table.column,
        endRow: table.row + bodyRowCount(table),
        endColumn: table.column + table.columns.length - 1,
      },
      cell.row,
      cell.column,
    ),
  );
}

function tableCells(table: NewTable): readonly GridCell[] {
  const headers = table.columns.map(({ header }, index) => ({
    row: table.row,
    column: table.column + index,
    value: header,
    style: table.headerStyle,
    computed: false,
  }));
  const blank = table.columns.map(() => '');
  const rows = table.rows.length === 0 ? [blank] : table.rows;
  const body = rows.flatMap((cells, down) => {
    if (cells.length !== table.columns.length) {
      throw new Error(`Row ${down + 1} of table ${table.name} has ${cells.length} cells`);
    }
    return cells.map((cell, index) => ({
      row: table.row + 1 + down,
      column: table.column + index,
      ...(typeof cell === 'object' ? cell : { value: cell }),
      style: table.columns[index]?.style,
      computed: false,
    }));
  });
  return [...headers, ...body];
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

import type { TableData } from '../../../workbook/port.ts';
import type { RangeImage, TableImage, WorkbookImage } from '../../../xlsx/image.ts';
import type { CellPlace } from './places.ts';
import type { SheetCells } from './sheet-cells.ts';
import { sheetIdAt } from './sheet-ids.ts';

/** A table where it stands now. */
export interface LiveTable {
  readonly name: string;
  readonly sheetId: string;
  /** Header row included. */
  readonly range: RangeImage;
}

/** The workbook's tables, followed as they grow. */
export interface LiveTables {
  all(): readonly LiveTable[];
  read(table: LiveTable): TableData;
  image(table: LiveTable): TableImage;
  /** Makes a table end at `endRow`. */
  resize(name: string, endRow: number): void;
  /** Names of the tables whose range is not the one last saved. */
  changed(): readonly string[];
  markSaved(images: readonly TableImage[]): void;
  /** Calls back with each table whose place or headers change. */
  onMoved(listener: (table: LiveTable) => void): void;
}

/** Starts from the image's tables. */
export function createLiveTables(sheets: SheetCells, image: WorkbookImage): LiveTables {
  const tables = new Map<string, LiveTable>();
  const savedEnd = new Map<string, number>();
  const headers = headersIn(sheets);
  const listeners = new Set<(table: LiveTable) => void>();
  const move = (table: LiveTable) => {
    tables.set(table.name, table);
    for (const listener of listeners) listener(table);
  };
  image.sheets.forEach((sheet, index) => {
    for (const { name, range } of sheet.tables) {
      savedEnd.set(name, range.endRow);
      tables.set(name, { name, range, sheetId: sheetIdAt(index) });
    }
  });
  const typedBelow = new Map<string, Set<number>>();
  sheets.onEdit((cells) => {
    for (const table of [...tables.values()]) {
      if (cells.some((cell) => isHeaderOf(table, cell))) move(table);
      const typed = typedBelow.get(table.name) ?? new Set();
      typedBelow.set(table.name, typed);
      for (const cell of cells) if (isWithinColumns(table, cell)) typed.add(cell.row);
      const { range, sheetId } = table;
      const endRow = endAfterTyping(sheets, table, typed);
      if (endRow === range.endRow) continue;
      move({ ...table, range: { ...range, endRow } });
      sheets.takeLook(sheetId, { ...range, startRow: range.endRow + 1, endRow }, range.endRow);
    }
  });
  return {
    all: () => [...tables.values()],
    read: (table) => tableData(sheets, table, headers(table)),
    image: (table) => ({ name: table.name, range: table.range, headers: headers(table) }),
    resize(name, endRow) {
      const table = tables.get(name);
      if (!table) throw new Error(`There is no table ${name}.`);
      move({ ...table, range: { ...table.range, endRow } });
    },
    changed: () =>
      [...tables.values()]
        .filter(({ name, range }) => savedEnd.get(name) !== range.endRow)
        .map(({ name }) => name),
    markSaved(images) {
      for (const { name, range } of images) savedEnd.set(name, range.endRow);
    },
    onMoved: (listener) => void listeners.add(listener),
  };
}

const tableData = (
  sheets: SheetCells,
  table: LiveTable,
  headers: readonly string[],
): TableData => ({
  name: table.name,
  headers,
  rows: sheets.values(table.sheetId, bodyOf(table.range)),
  on: { sheet: sheets.sheetName(table.sheetId), headerRow: table.range.startRow + 1 },
});

const headersIn =
  (sheets: SheetCells) =>
  ({ sheetId, range }: LiveTable): readonly string[] =>
    (sheets.values(sheetId, { ...range, endRow: range.startRow })[0] ?? []).map(String);

/** A table's body: its range without the header row. */
export const bodyOf = (range: RangeImage): RangeImage => ({
  ...range,
  startRow: range.startRow + 1,
});

const isWithinColumns = ({ sheetId, range }: LiveTable, cell: CellPlace): boolean =>
  cell.sheetId === sheetId && cell.column >= range.startColumn && cell.column <= range.endColumn;

const isHeaderOf = (table: LiveTable, cell: CellPlace): boolean =>
  isWithinColumns(table, cell) && cell.row === table.range.startRow;

/**
 * Typing or pasting right below a table makes it longer, as in Excel; so it does with one row left
 * blank, where nobody would see that the lines are not in the table.
 */
function endAfterTyping(sheets: SheetCells, table: LiveTable, typed: ReadonlySet<number>): number {
  const { sheetId, range } = table;
  const isTyped = (row: number): boolean =>
    typed.has(row) && !sheets.isBlank(sheetId, { ...range, startRow: row, endRow: row });
  let end = range.endRow;
  for (;;) {
    if (isTyped(end + 1)) end += 1;
    else if (isTyped(end + 2)) end += 2;
    else return end;
  }
}

import { ICommandService, type Injector } from '@univerjs/presets';
import { IFunctionService, SetSuperTableMutation } from '@univerjs/preset-sheets-core';
import type { TableData } from '../../../workbook/port.ts';
import type { RangeImage, TableImage, WorkbookImage } from '../../../xlsx/image.ts';
import type { Grid } from './grid.ts';
import type { CellPlace } from './places.ts';
import { sheetIdAt, UNIT_ID } from './snapshot.ts';

/** A table where it stands now. */
export interface LiveTable {
  readonly name: string;
  readonly sheetId: string;
  /** Header row included. */
  readonly range: RangeImage;
}

/** The workbook's tables, followed as they grow, and known to the formula engine by name. */
export interface LiveTables {
  all(): readonly LiveTable[];
  read(table: LiveTable): TableData;
  image(table: LiveTable): TableImage;
  /** Makes a table end at `endRow`; formulas that name it see the new rows. */
  resize(name: string, endRow: number): void;
  /** Names of the tables whose range is not the one last saved. */
  changed(): readonly string[];
  markSaved(images: readonly TableImage[]): void;
}

/** Starts from the image's tables and tells the engine their names. */
export function createLiveTables(injector: Injector, grid: Grid, image: WorkbookImage): LiveTables {
  const tables = new Map<string, LiveTable>();
  const savedEnd = new Map<string, number>();
  const headers = headersIn(grid);
  const register = (table: LiveTable) => {
    tables.set(table.name, table);
    tellEngine(injector, table, headers(table));
  };
  image.sheets.forEach((sheet, index) => {
    for (const { name, range } of sheet.tables) {
      savedEnd.set(name, range.endRow);
      register({ name, range, sheetId: sheetIdAt(index) });
    }
  });
  const typedBelow = new Map<string, Set<number>>();
  grid.onEdit((cells) => {
    for (const table of [...tables.values()]) {
      if (cells.some((cell) => isHeaderOf(table, cell))) register(table);
      const typed = typedBelow.get(table.name) ?? new Set();
      typedBelow.set(table.name, typed);
      for (const cell of cells) if (isWithinColumns(table, cell)) typed.add(cell.row);
      const { range, sheetId } = table;
      const endRow = endAfterTyping(grid, table, typed);
      if (endRow === range.endRow) continue;
      register({ ...table, range: { ...range, endRow } });
      grid.takeLook(sheetId, { ...range, startRow: range.endRow + 1, endRow }, range.endRow);
    }
  });
  return {
    all: () => [...tables.values()],
    read: (table) => tableData(grid, table, headers(table)),
    image: (table) => ({ name: table.name, range: table.range, headers: headers(table) }),
    resize(name, endRow) {
      const table = tables.get(name);
      if (!table) throw new Error(`There is no table ${name}.`);
      register({ ...table, range: { ...table.range, endRow } });
    },
    changed: () =>
      [...tables.values()]
        .filter(({ name, range }) => savedEnd.get(name) !== range.endRow)
        .map(({ name }) => name),
    markSaved(images) {
      for (const { name, range } of images) savedEnd.set(name, range.endRow);
    },
  };
}

const tableData = (grid: Grid, table: LiveTable, headers: readonly string[]): TableData => ({
  name: table.name,
  headers,
  rows: grid.values(table.sheetId, bodyOf(table.range)),
  on: { sheet: grid.sheetName(table.sheetId), headerRow: table.range.startRow + 1 },
});

/** Makes formulas that name the table see it as it is now. */
function tellEngine(injector: Injector, table: LiveTable, headers: readonly string[]): void {
  // The engine keeps parsed formulas with the range their tables had: it must parse them again.
  injector.get(IFunctionService).deleteFormulaAstCacheKey(table.name);
  injector.get(ICommandService).syncExecuteCommand(SetSuperTableMutation.id, {
    unitId: UNIT_ID,
    tableName: table.name,
    reference: {
      sheetId: table.sheetId,
      range: { ...table.range },
      titleMap: new Map(headers.map((header, index) => [header, index])),
    },
  });
}

const headersIn =
  (grid: Grid) =>
  ({ sheetId, range }: LiveTable): readonly string[] =>
    (grid.values(sheetId, { ...range, endRow: range.startRow })[0] ?? []).map(String);

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
function endAfterTyping(grid: Grid, table: LiveTable, typed: ReadonlySet<number>): number {
  const { sheetId, range } = table;
  const isTyped = (row: number): boolean =>
    typed.has(row) && !grid.isBlank(sheetId, { ...range, startRow: row, endRow: row });
  let end = range.endRow;
  for (;;) {
    if (isTyped(end + 1)) end += 1;
    else if (isTyped(end + 2)) end += 2;
    else return end;
  }
}

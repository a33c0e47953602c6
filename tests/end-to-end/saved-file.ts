import type ExcelJS from 'exceljs';
import { contains } from '../../src/xlsx/address.ts';
import type { SheetImage, WorkbookImage } from '../../src/xlsx/image.ts';
import type { Cell, TableData } from '../../src/workbook/port.ts';
import { byExcelJs, byLibreOffice } from '../xlsx/support.ts';

/** A cell as the grid shows it. Rows and columns count from 0. */
export interface ShownCell {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly value: Cell;
  /**
   * LibreOffice works out anew what spills and what may hang on TODAY(), and does not know our
   * functions: such a cell may show #NAME? there.
   */
  readonly isWorkedOutAnew: boolean;
}

/** The grid's rows of a whole sheet as cells. */
export function shownCells(
  { name, cells }: SheetImage,
  rows: readonly (readonly Cell[])[],
): readonly ShownCell[] {
  const spills = cells.flatMap(({ spill }) => spill ?? []);
  const formulas = cells.filter(({ formula }) => formula !== undefined);
  const isDaily = formulas.some(({ formula }) => formula?.includes('TODAY()'));
  const isAnew = (row: number, column: number) =>
    spills.some((range) => contains(range, row, column)) ||
    (isDaily && formulas.some((cell) => cell.row === row && cell.column === column));
  return rows.flatMap((line, row) =>
    line.map((value, column) => ({
      sheet: name,
      row,
      column,
      value,
      isWorkedOutAnew: isAnew(row, column),
    })),
  );
}

/** "A1:H40": every cell of a sheet that holds or shows something. */
export function wholeRange({ cells }: SheetImage): string {
  const rows = cells.map(({ row, spill }) => spill?.endRow ?? row);
  const columns = cells.map(({ column, spill }) => spill?.endColumn ?? column);
  return `A1:${letters(Math.max(0, ...columns))}${String(Math.max(0, ...rows) + 1)}`;
}

/** A table of the file as rows, its spilled cells aside. */
export function tableOf({ sheets }: WorkbookImage, name: string): TableData {
  for (const { tables, cells } of sheets) {
    const table = tables.find((each) => each.name === name);
    if (!table) continue;
    const { startRow, endRow, startColumn, endColumn } = table.range;
    const at = new Map(cells.map((cell) => [`${String(cell.row)} ${String(cell.column)}`, cell]));
    const rows = Array.from({ length: endRow - startRow }, (_, down) =>
      Array.from(
        { length: endColumn - startColumn + 1 },
        (__, right) =>
          at.get(`${String(startRow + 1 + down)} ${String(startColumn + right)}`)?.value ?? '',
      ),
    );
    return { name, headers: table.headers, rows };
  }
  throw new Error(`The file has no table ${name}.`);
}

/** Reads a cell as another library does, a formula by its stored answer. */
export async function byAnotherLibrary(bytes: Uint8Array): Promise<(cell: ShownCell) => Cell> {
  const book = await byExcelJs(bytes);
  return ({ sheet, row, column }) => {
    const cell = book.getWorksheet(sheet)?.getCell(row + 1, column + 1);
    if (!cell) throw new Error(`There is no sheet ${sheet}.`);
    // It gives every cell of a merged block the first one's value; in the file the others are blank.
    if (cell.master !== cell) return '';
    // It leaves an answer of 0, FALSE or "" out of a formula's value, not out of its result.
    return plain(cell.formula ? cell.result : cell.value);
  };
}

/** Reads a cell as LibreOffice shows it. */
export function byOffice(bytes: Uint8Array): (cell: ShownCell) => Cell {
  const files = byLibreOffice(bytes, 'csv');
  const sheets = new Map(
    [...files].map(([name, file]) => [
      /^book-(.*)\.csv$/.exec(name)?.[1],
      csvRows(file.toString('utf8')),
    ]),
  );
  return ({ sheet, row, column, value }) => {
    const rows = sheets.get(sheet);
    if (!rows) throw new Error(`LibreOffice wrote no sheet ${sheet}.`);
    return readShown(rows[row]?.[column] ?? '', value);
  };
}

/** Equal, numbers to the fifteen digits that a cell holds. */
export function isSame(found: Cell, value: Cell): boolean {
  if (typeof found !== 'number' || typeof value !== 'number') return found === value;
  return Math.abs(found - value) <= 1e-14 * Math.max(1, Math.abs(value));
}

/** A shown text as the value it stands for, where `like` says which kind to expect. */
function readShown(text: string, like: Cell): Cell {
  if (typeof like === 'boolean') return text === 'TRUE';
  if (typeof like !== 'number' || text === '' || text.startsWith('#')) return text;
  const [, month, day, year] = /^(\d\d)\/(\d\d)\/(\d{4})$/.exec(text) ?? [];
  const date = year === undefined ? text : [year, month, day].join('-');
  if (/^\d{4}-\d\d-\d\d$/.test(date)) return serialOf(new Date(date));
  const number = Number(text.replace(/ ?%$/, ''));
  return text.endsWith('%') ? number / 100 : number;
}

function plain(value: ExcelJS.CellValue): Cell {
  if (value === null || value === undefined) return '';
  if (value instanceof Date) return serialOf(value);
  if (typeof value !== 'object') return value;
  if ('error' in value) return value.error;
  throw new Error(`A cell holds ${JSON.stringify(value)}.`);
}

/** Days since 30 December 1899, as a workbook counts them. */
const serialOf = (date: Date): number => date.getTime() / 86_400_000 + 25_569;

function csvRows(text: string): string[][] {
  const rows: string[][] = [[]];
  for (const [, quoted, bare, end] of text.matchAll(/(?:"((?:[^"]|"")*)"|([^",\n]*))(,|\n|$)/g)) {
    rows.at(-1)?.push(quoted?.replaceAll('""', '"') ?? bare ?? '');
    if (end === '\n') rows.push([]);
  }
  return rows;
}

function letters(column: number): string {
  const last = String.fromCharCode(65 + (column % 26));
  return column < 26 ? last : letters(Math.floor(column / 26) - 1) + last;
}

import type { Cell, TableData } from '../../workbook/port.ts';
import { contains } from '../address.ts';
import type { CellImage, TableImage } from '../image.ts';
import { openPackage } from '../parts/package.ts';
import { roomForCells } from './sheet-walk.ts';
import { readSheet } from './read-sheet.ts';
import { readStrings } from './read-strings.ts';
import { sheetTables, type StoredTable, tableImage } from './read-table.ts';
import { type Refused, refusedOr } from '../refusal.ts';
import { readWorkbookParts } from '../parts/workbook-parts.ts';

export interface TablesRead {
  readonly kind: 'read';
  readonly tables: readonly TableData[];
}

/** Reads only the tables of an .xlsx, each formula as its last result. Refuses what `readWorkbook` refuses. */
export const readTables = (bytes: Uint8Array): TablesRead | Refused =>
  refusedOr(() => ({ kind: 'read', tables: tablesOf(bytes) }));

function tablesOf(bytes: Uint8Array): TableData[] {
  const pack = openPackage(bytes);
  const { sheets, stringsPart } = readWorkbookParts(pack);
  const room = roomForCells();
  const strings = stringsPart ? readStrings(stringsPart, pack.text(stringsPart)) : [];
  return sheets
    .filter(({ kind }) => kind === 'worksheet')
    .flatMap((sheet) => {
      const tables = sheetTables(pack, sheet).filter(isOfUse);
      if (tables.length === 0) return [];
      const { cells } = readSheet(sheet.part, pack.text(sheet.part), strings, 0, room);
      return tables.map((table) => tableOf(tableImage(table), cells));
    });
}

/** None of our tables is so wide; a hostile one would make a cell of every column of every row. */
const MOST_COLUMNS = 250;

const isOfUse = ({ hasHeaderRow, headers }: StoredTable): boolean =>
  hasHeaderRow && headers.length <= MOST_COLUMNS;

/** A table's filled rows, in order: its range may claim a million that hold nothing. */
function tableOf({ name, headers, range }: TableImage, cells: readonly CellImage[]): TableData {
  const rows = new Map<number, Cell[]>();
  for (const { row, column, value } of cells) {
    if (value === '' || row === range.startRow || !contains(range, row, column)) continue;
    const known = rows.get(row) ?? headers.map((): Cell => '');
    known[column - range.startColumn] = value;
    rows.set(row, known);
  }
  return { name, headers, rows: [...rows].sort(([a], [b]) => a - b).map(([, row]) => row) };
}

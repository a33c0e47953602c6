import {
  BooleanNumber,
  CellValueType,
  LocaleType,
  type ICellData,
  type IRowData,
  type IWorkbookData,
  type IWorksheetData,
} from '@univerjs/presets';
import type { Cell } from '../../../workbook/port.ts';
import type { CellImage, SheetImage, WorkbookImage } from '../../../xlsx/image.ts';
import { FEWEST_COLUMNS, SPARE_COLUMNS, SPARE_ROWS } from '../../../xlsx/read/shown-ranges.ts';
import type { Opening } from './opening.ts';
import { gridStyles, TEXT_SUFFIX } from './grid-styles.ts';
import { highlightRules } from './highlights.ts';
import { listRule } from './list-rules.ts';
import { absolute } from './absolute-range.ts';
import { sheetIdAt, UNIT_ID } from './sheet-ids.ts';

/**
 * Turns a workbook image into the grid's own snapshot: values, formulas, looks, names, lists. A long
 * sheet is filled piece by piece, with a pause of the opening after each.
 */
export async function snapshotOf(
  image: WorkbookImage,
  opening: Pick<Opening, 'pause'>,
): Promise<IWorkbookData> {
  const ids = image.sheets.map((_, index) => sheetIdAt(index));
  const fill = cellFiller(image, opening);
  const sheets: Record<string, Partial<IWorksheetData>> = {};
  for (const [index, sheet] of image.sheets.entries()) {
    sheets[sheetIdAt(index)] = sheetOf(sheet, sheetIdAt(index), await fill(sheet.cells));
  }
  return {
    id: UNIT_ID,
    name: image.fileName,
    appVersion: '',
    locale: LocaleType.EN_US,
    styles: gridStyles(image.styles),
    sheetOrder: ids,
    sheets,
    resources: [
      { name: 'SHEET_DEFINED_NAME_PLUGIN', data: JSON.stringify(namesOf(image)) },
      { name: 'SHEET_DATA_VALIDATION_PLUGIN', data: JSON.stringify(listsOf(image)) },
      { name: 'SHEET_CONDITIONAL_FORMATTING_PLUGIN', data: JSON.stringify(highlightsOf(image)) },
    ],
  };
}

/** A plain value as the grid holds it. Text that could be read again as something else is pinned. */
export function plainCell(value: Cell): ICellData {
  if (typeof value === 'number') return { v: value, t: CellValueType.NUMBER };
  if (typeof value === 'boolean') return { v: value ? 1 : 0, t: CellValueType.BOOLEAN };
  return { v: value, t: CellValueType.STRING };
}

/** Whether the grid would turn this text into a formula when someone opens and leaves the cell. */
export const looksLikeFormula = (value: Cell): boolean =>
  typeof value === 'string' && value.trimStart().startsWith('=');

function cellOf(cell: CellImage): ICellData {
  if (cell.formula !== undefined) {
    return { ...plainCell(cell.value), f: cell.formula, s: String(cell.style) };
  }
  if (cell.value === '') return { s: String(cell.style) };
  const style = looksLikeFormula(cell.value) ? `${String(cell.style)}${TEXT_SUFFIX}` : cell.style;
  return { ...plainCell(cell.value), s: String(style) };
}

/** Cells filled between two pauses. */
const CELLS_A_PAUSE = 4_000;

interface Filled {
  readonly cellData: Record<number, Record<number, ICellData>>;
  readonly lastRow: number;
  readonly lastColumn: number;
}

/** Fills one sheet after the other, counting through them all. */
function cellFiller({ sheets }: WorkbookImage, opening: Pick<Opening, 'pause'>) {
  const total = sheets.reduce((sum, { cells }) => sum + cells.length, 0);
  let filled = 0;
  return async (cells: readonly CellImage[]): Promise<Filled> => {
    const cellData: Record<number, Record<number, ICellData>> = {};
    let lastRow = 0;
    let lastColumn = 0;
    for (const cell of cells) {
      if (filled % CELLS_A_PAUSE === 0) await opening.pause('Filling the sheets', filled / total);
      (cellData[cell.row] ??= {})[cell.column] = cellOf(cell);
      lastRow = Math.max(lastRow, cell.spill?.endRow ?? cell.row);
      lastColumn = Math.max(lastColumn, cell.spill?.endColumn ?? cell.column);
      filled += 1;
    }
    return { cellData, lastRow, lastColumn };
  };
}

function sheetOf(
  sheet: SheetImage,
  id: string,
  { cellData, lastRow, lastColumn }: Filled,
): Partial<IWorksheetData> {
  return {
    id,
    name: sheet.name,
    hidden: sheet.hidden ? BooleanNumber.TRUE : BooleanNumber.FALSE,
    rowCount: lastRow + 1 + SPARE_ROWS,
    columnCount: Math.max(lastColumn + 1 + SPARE_COLUMNS, FEWEST_COLUMNS),
    cellData,
    columnData: Object.fromEntries(
      Object.entries(sheet.columnWidths).map(([column, pixels]) => [column, { w: pixels }]),
    ),
    rowData: Object.fromEntries(
      Object.entries(sheet.rowHeights).map(([row, pixels]) => [row, rowOf(pixels)]),
    ),
    showGridlines: sheet.gridLines ? BooleanNumber.TRUE : BooleanNumber.FALSE,
    ...(sheet.tabColor === undefined ? {} : { tabColor: sheet.tabColor }),
    mergeData: sheet.merges.map((range) => ({ ...range })),
    freeze: {
      xSplit: sheet.frozenColumns,
      ySplit: sheet.frozenRows,
      startRow: sheet.frozenRows > 0 ? sheet.frozenRows : -1,
      startColumn: sheet.frozenColumns > 0 ? sheet.frozenColumns : -1,
    },
  };
}

/** A row as someone set it, which stays so whatever it holds. */
const rowOf = (pixels: number): Partial<IRowData> =>
  pixels === 0 ? { hd: BooleanNumber.TRUE } : { h: pixels, ia: BooleanNumber.FALSE };

const namesOf = (image: WorkbookImage) =>
  Object.fromEntries(
    image.names.map((name, index) => [
      `name-${String(index)}`,
      {
        id: `name-${String(index)}`,
        name: name.name,
        formulaOrRefString: absolute(name.sheet, name.range),
        localSheetId: 'AllDefaultWorkbook',
      },
    ]),
  );

const listsOf = (image: WorkbookImage) =>
  Object.fromEntries(
    image.sheets.map((sheet, index) => [
      sheetIdAt(index),
      sheet.validations.map((list, rule) => listRule(list, `list-${String(rule)}`, image.sheets)),
    ]),
  );

const highlightsOf = (image: WorkbookImage) =>
  Object.fromEntries(image.sheets.map((sheet, index) => [sheetIdAt(index), highlightRules(sheet)]));

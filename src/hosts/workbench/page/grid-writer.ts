import {
  CellValueType,
  type ICellData,
  type ICommandService,
  type Workbook,
} from '@univerjs/presets';
import {
  SetRangeValuesMutation,
  SetWorksheetRowCountMutation,
  type ISetRangeValuesMutationParams,
} from '@univerjs/preset-sheets-core';
import type { Cell } from '../../../workbook/port.ts';
import { TEXT_FORMAT, TEXT_SUFFIX } from './grid-styles.ts';
import { rowsIn, type CellPlace } from './places.ts';
import type { CellWrite, SheetCells } from './sheet-cells.ts';
import { UNIT_ID } from './sheet-ids.ts';
import { looksLikeFormula, plainCell } from './snapshot.ts';

/** Rows added below when a table grows past the sheet's end. */
const SPARE_ROWS = 200;

/** Writes plain values through the grid's smallest commands, which leave the undo history alone. */
export function createGridWriter(
  workbook: Workbook,
  commands: ICommandService,
): Pick<SheetCells, 'write' | 'takeLook'> {
  const raw = ({ sheetId, row, column }: CellPlace): ICellData | undefined =>
    workbook.getSheetBySheetId(sheetId)?.getCellRaw(row, column) ?? undefined;
  const setRaw = (cells: readonly RawCell[]) => {
    for (const [subUnitId, cellValue] of bySheet(cells)) {
      const params: ISetRangeValuesMutationParams = { unitId: UNIT_ID, subUnitId, cellValue };
      commands.syncExecuteCommand(SetRangeValuesMutation.id, params);
    }
  };
  const growSheets = (cells: readonly CellPlace[]) => {
    for (const { sheetId, row } of cells) {
      if (row < (workbook.getSheetBySheetId(sheetId)?.getRowCount() ?? 0)) continue;
      const params = { unitId: UNIT_ID, subUnitId: sheetId, rowCount: row + 1 + SPARE_ROWS };
      commands.syncExecuteCommand(SetWorksheetRowCountMutation.id, params);
    }
  };
  return {
    write(cells) {
      growSheets(cells);
      const before = cells.map((place) => ({ ...place, cell: wholeCell(raw(place)) }));
      setRaw(
        cells.map((cell) => ({
          ...cell,
          cell: { ...lookOf(cell, raw), ...writtenCell(cell.value) },
        })),
      );
      return () => {
        setRaw(before);
      };
    },
    takeLook(sheetId, range, likeRow) {
      const places = rowsIn(range, (row, column) => ({ sheetId, row, column })).flat();
      setRaw(places.map((place) => ({ ...place, cell: lookOf({ ...place, likeRow }, raw) })));
    },
  };
}

type RawCell = CellPlace & { readonly cell: ICellData | null };

/** `null` in each slot that the new value does not fill, or the old formula would stay. */
function writtenCell(value: Cell): ICellData {
  const cleared = { f: null, si: null, p: null };
  if (value === '') return { ...cleared, v: null };
  if (looksLikeFormula(value)) return { ...cleared, ...plainCell(value), s: { n: TEXT_FORMAT } };
  return {
    ...cleared,
    ...plainCell(value),
    ...(typeof value === 'string' ? { t: CellValueType.FORCE_STRING } : {}),
  };
}

function lookOf(
  cell: Omit<CellWrite, 'value'>,
  raw: (place: CellPlace) => ICellData | undefined,
): ICellData {
  if (cell.likeRow === undefined) return {};
  const style = raw({ ...cell, row: cell.likeRow })?.s ?? null;
  // A text that looks like a formula is pinned as text; the row below need not be.
  return { s: typeof style === 'string' ? style.replace(TEXT_SUFFIX, '') : style };
}

const wholeCell = (cell: ICellData | undefined): ICellData | null =>
  cell ? { f: null, si: null, p: null, v: null, t: null, s: null, ...cell } : null;

function bySheet(cells: readonly RawCell[]) {
  const sheets = new Map<string, Record<number, Record<number, ICellData | null>>>();
  for (const { sheetId, row, column, cell } of cells) {
    const matrix = sheets.get(sheetId) ?? {};
    (matrix[row] ??= {})[column] = cell;
    sheets.set(sheetId, matrix);
  }
  return sheets;
}

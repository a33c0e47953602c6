import { CellValueType, type ICellData, type Workbook } from '@univerjs/presets';
import type { FormulaDataModel } from '@univerjs/preset-sheets-core';
import type { Cell } from '../../../workbook/port.ts';
import type { RangeImage } from '../../../xlsx/image.ts';
import type { Grid } from './grid.ts';
import { placesOf, rowsIn, type CellPlace } from './places.ts';
import { UNIT_ID } from './sheet-ids.ts';

/** Reads cells with their formulas and spilled results. */
export function createGridReader(
  workbook: Workbook,
  model: FormulaDataModel,
): Pick<Grid, 'read' | 'values' | 'formulas'> {
  const raw = ({ sheetId, row, column }: CellPlace): ICellData | undefined =>
    workbook.getSheetBySheetId(sheetId)?.getCellRaw(row, column) ?? undefined;
  const spilled = ({ sheetId, row, column }: CellPlace): ICellData | undefined =>
    model.getArrayFormulaCellData()[UNIT_ID]?.[sheetId]?.[row]?.[column] ?? undefined;
  const valueAt = (place: CellPlace): Cell => valueOf(spilled(place) ?? raw(place));
  const formulaAt = (place: CellPlace): string | undefined => {
    const cell = raw(place);
    if (!cell?.f && !cell?.si) return undefined;
    const { row, column, sheetId } = place;
    return model.getFormulaStringByCell(row, column, sheetId, UNIT_ID) ?? undefined;
  };
  return {
    read(place) {
      const { sheetId, row, column } = place;
      const value = valueAt(place);
      const formula = formulaAt(place);
      if (formula === undefined) return { value };
      const range = model.getArrayFormulaRange()[UNIT_ID]?.[sheetId]?.[row]?.[column];
      if (!range || isOneCell(range) || value === '#SPILL!') return { value, formula };
      const spill = rowsIn(range, (r, c) => valueAt({ sheetId, row: r, column: c }));
      return { value, formula, spill };
    },
    values(sheetId, range) {
      const cells = workbook.getSheetBySheetId(sheetId)?.getCellMatrix().getMatrix() ?? {};
      const spills = model.getArrayFormulaCellData()[UNIT_ID]?.[sheetId] ?? {};
      const { startRow, startColumn, endRow, endColumn } = range;
      return Array.from({ length: endRow - startRow + 1 }, (_, down) => {
        const row = cells[startRow + down];
        const spilled = spills[startRow + down];
        return Array.from({ length: endColumn - startColumn + 1 }, (__, right) =>
          valueOf(spilled?.[startColumn + right] ?? row?.[startColumn + right] ?? undefined),
        );
      });
    },
    formulas: () =>
      Object.entries(model.getFormulaData()[UNIT_ID] ?? {}).flatMap(([sheetId, matrix]) =>
        placesOf(sheetId, matrix ?? {}).filter((place) => formulaAt(place) !== undefined),
      ),
  };
}

function valueOf(cell: ICellData | undefined): Cell {
  if (!cell) return '';
  if (cell.p?.body) return cell.p.body.dataStream.replace(/\r\n$/, '').replaceAll('\r', '\n');
  if (cell.v === undefined || cell.v === null) return '';
  if (cell.t === CellValueType.BOOLEAN) return Number(cell.v) === 1;
  return cell.v;
}

const isOneCell = (range: RangeImage): boolean =>
  range.startRow === range.endRow && range.startColumn === range.endColumn;

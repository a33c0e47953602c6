import {
  ICommandService,
  IUniverInstanceService,
  ObjectMatrix,
  UniverInstanceType,
  type ICellData,
  type Injector,
  type Nullable,
  type Workbook,
} from '@univerjs/presets';
import {
  FormulaDataModel,
  initSheetFormulaData,
  SetRangeValuesMutation,
  type ISetRangeValuesMutationParams,
} from '@univerjs/preset-sheets-core';
import type { WorkbookImage } from '../../../xlsx/image.ts';
import { sheetIdAt, UNIT_ID } from './sheet-ids.ts';

type Row = Readonly<Record<number, Nullable<ICellData>>>;

/**
 * Lets the engine look for formulas only in rows that ever held one. It looks several times an edit,
 * each time through every cell of the workbook. A formula comes by the file or by the one mutation
 * below: whatever else could bring or move one, `guard.ts` stops.
 */
export function findFormulasByRow(injector: Injector, { sheets }: WorkbookImage): void {
  const rowsOf = new Map<string, Set<number>>();
  sheets.forEach(({ cells }, index) => {
    const rows = cells.filter(({ formula }) => formula !== undefined).map(({ row }) => row);
    rowsOf.set(sheetIdAt(index), new Set(rows));
  });
  injector.get(ICommandService).beforeCommandExecuted(({ id, params }) => {
    if (id !== SetRangeValuesMutation.id) return;
    const { subUnitId, cellValue } = params as ISetRangeValuesMutationParams;
    for (const [row, cells] of Object.entries(cellValue ?? {})) {
      if (hasFormula(cells as Row)) rowsOf.get(subUnitId)?.add(Number(row));
    }
  });
  const instances = injector.get(IUniverInstanceService);
  injector.get(FormulaDataModel).getFormulaData = () => {
    const found: ReturnType<FormulaDataModel['getFormulaData']> = { [UNIT_ID]: {} };
    const workbook = instances.getUnit<Workbook>(UNIT_ID, UniverInstanceType.UNIVER_SHEET);
    for (const sheet of workbook?.getSheets() ?? []) {
      const cells = sheet.getCellMatrix().getMatrix();
      const few: Record<number, Row> = {};
      for (const row of rowsOf.get(sheet.getSheetId()) ?? []) {
        if (cells[row]) few[row] = cells[row];
      }
      initSheetFormulaData(found, UNIT_ID, sheet.getSheetId(), new ObjectMatrix(few));
    }
    return found;
  };
}

const hasFormula = (cells: Row | null | undefined): boolean =>
  Object.values(cells ?? {}).some((cell) => Boolean(cell?.f) || Boolean(cell?.si));

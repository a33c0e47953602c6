import {
  ICommandService,
  IUniverInstanceService,
  UniverInstanceType,
  type Injector,
  type Workbook,
} from '@univerjs/presets';
import {
  FormulaCalculationSessionService,
  FormulaDataModel,
  SetRangeValuesMutation,
  type ISetRangeValuesMutationParams,
} from '@univerjs/preset-sheets-core';
import { createGridReader } from './grid-reader.ts';
import { createGridWriter } from './grid-writer.ts';
import { placesOf, rowsIn } from './places.ts';
import type { SheetCells } from './sheet-cells.ts';
import { UNIT_ID } from './sheet-ids.ts';

/** The live grid's cells; everything else here talks to it only. */
export interface Grid extends SheetCells {
  /** Every sheet's name by its id. */
  sheetNames(): Readonly<Record<string, string>>;
}

/** Wraps the grid's own services. The workbook must exist. */
export function createGrid(injector: Injector): Grid {
  const commands = injector.get(ICommandService);
  const workbook = injector
    .get(IUniverInstanceService)
    .getUnit<Workbook>(UNIT_ID, UniverInstanceType.UNIVER_SHEET);
  if (!workbook) throw new Error('The grid has no workbook.');
  const reader = createGridReader(workbook, injector.get(FormulaDataModel));
  return {
    worksOut: true,
    sheetName: (sheetId) => workbook.getSheetBySheetId(sheetId)?.getName() ?? '',
    sheetNames: () =>
      Object.fromEntries(
        workbook.getSheets().map((sheet) => [sheet.getSheetId(), sheet.getName()]),
      ),
    ...reader,
    isBlank: (sheetId, range) =>
      rowsIn(range, (row, column) => reader.read({ sheetId, row, column }))
        .flat()
        .every(({ value, formula }) => value === '' && formula === undefined),
    ...createGridWriter(workbook, commands),
    onEdit(listener) {
      commands.onCommandExecuted((command, options) => {
        if (command.id !== SetRangeValuesMutation.id) return;
        // The engine writes its results through the same mutation; they are no one's edit.
        if (options?.onlyLocal === true) return;
        const params = command.params as ISetRangeValuesMutationParams;
        if (params.unitId !== UNIT_ID || !params.cellValue) return;
        listener(placesOf(params.subUnitId, params.cellValue));
      });
    },
    settled: () => settle(injector.get(FormulaCalculationSessionService)),
  };
}

async function settle(session: FormulaCalculationSessionService): Promise<void> {
  const { started, resultApplied } = session.state;
  await session.waitForLatestApplied();
  // A run under way when we came knew nothing of the newest cells: wait for the next one too.
  if (started && !resultApplied) await session.waitForLatestApplied();
}

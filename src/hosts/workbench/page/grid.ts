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
import type { Cell } from '../../../workbook/port.ts';
import type { RangeImage } from '../../../xlsx/image.ts';
import { createGridReader } from './grid-reader.ts';
import { createGridWriter } from './grid-writer.ts';
import { placesOf, rowsIn, type CellPlace } from './places.ts';
import { UNIT_ID } from './snapshot.ts';

/** What stands in one cell now. */
export interface Content {
  readonly value: Cell;
  readonly formula?: string;
  /** A spilling formula's rows, its own cell first. */
  readonly spill?: readonly (readonly Cell[])[];
}

/** One value to put into a cell. */
export interface CellWrite extends CellPlace {
  readonly value: Cell;
  /** The row whose look (number format, colours) the cell takes. */
  readonly likeRow?: number;
}

/** The live grid as rows and columns of plain values; everything else here talks to it only. */
export interface Grid {
  sheetName(sheetId: string): string;
  /** Every sheet's name by its id. */
  sheetNames(): Readonly<Record<string, string>>;
  read(place: CellPlace): Content;
  /** The values of a range, row by row; quicker than cell by cell. */
  values(sheetId: string, range: RangeImage): Cell[][];
  /** Every formula cell of every sheet. */
  formulas(): readonly CellPlace[];
  /** Whether all cells of the range are blank. */
  isBlank(sheetId: string, range: RangeImage): boolean;
  /** Writes plain values, never formulas, outside the undo history. Returns how to put all back. */
  write(cells: readonly CellWrite[]): () => void;
  /** Gives the cells of a range the look of the row `likeRow`, outside the undo history. */
  takeLook(sheetId: string, range: RangeImage, likeRow: number): void;
  /** Calls back with the cells that change, by whoever's hand; formula results are not reported. */
  onEdit(listener: (cells: readonly CellPlace[]) => void): void;
  /** Resolves once the engine has answered everything written up to now. */
  settled(): Promise<void>;
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

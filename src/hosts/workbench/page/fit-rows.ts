import { ICommandService, type Injector } from '@univerjs/presets';
import {
  SetWorksheetRowAutoHeightMutation,
  SheetSkeletonService,
} from '@univerjs/preset-sheets-core';
import type { SheetImage, StyleImage, WorkbookImage } from '../../../xlsx/image.ts';
import { sheetIdAt, UNIT_ID } from './sheet-ids.ts';

/** The grid's rows hold one line of this many points; a taller row must be measured. */
const POINTS_IN_A_ROW = 12;

/** Gives rows that hold large or wrapped text the height it needs, where the file sets none. */
export function fitRows(injector: Injector, image: WorkbookImage): void {
  const skeletons = injector.get(SheetSkeletonService);
  const commands = injector.get(ICommandService);
  image.sheets.forEach((sheet, index) => {
    const skeleton = skeletons.getSkeleton(UNIT_ID, sheetIdAt(index));
    const ranges = rowsToFit(sheet, image.styles).map((row) => ({
      startRow: row,
      endRow: row,
      startColumn: 0,
      endColumn: lastColumn(sheet),
    }));
    if (!skeleton || ranges.length === 0) return;
    commands.syncExecuteCommand(SetWorksheetRowAutoHeightMutation.id, {
      unitId: UNIT_ID,
      subUnitId: sheetIdAt(index),
      rowsAutoHeightInfo: skeleton.calculateAutoHeightInRange(ranges),
    });
  });
}

function rowsToFit(sheet: SheetImage, styles: readonly StyleImage[]): readonly number[] {
  const tall = sheet.cells.filter(({ row, value, style }) => {
    const look = styles[style];
    const isTall = look?.wrap === true || (look?.fontSize ?? 0) > POINTS_IN_A_ROW;
    return isTall && value !== '' && sheet.rowHeights[row] === undefined;
  });
  return [...new Set(tall.map(({ row }) => row))];
}

const lastColumn = ({ cells }: SheetImage): number =>
  cells.reduce((last, { column }) => Math.max(last, column), 0);

import { ICommandService, type FUniver, type Injector } from '@univerjs/presets';
import {
  ILayoutService,
  ScrollToRangeOperation,
  SetFormulaCalculationResultMutation,
  SetSelectionsOperation,
  SetWorksheetActiveOperation,
} from '@univerjs/preset-sheets-core';
import type { Failures } from './failures.ts';
import type { Grid } from './grid.ts';
import { messageOf } from './message-line.ts';
import type { CellPlace } from './places.ts';

/** Selects a cell of whatever sheet, scrolled into sight, with the keys going into it. */
export const selecting =
  (api: FUniver, injector: Injector) =>
  ({ sheetId, row, column }: CellPlace): void => {
    const workbook = api.getActiveWorkbook();
    const sheet = workbook?.getSheetBySheetId(sheetId);
    if (!workbook || !sheet) return;
    workbook.setActiveSheet(sheet);
    sheet.getRange(row, column).activate();
    const range = { startRow: row, endRow: row, startColumn: column, endColumn: column };
    void injector.get(ICommandService).executeCommand(ScrollToRangeOperation.id, { range });
    injector.get(ILayoutService).focus();
  };

/** Says why the selected cell shows an error, whenever the selection or the answers move. */
export function followSelection(
  api: FUniver,
  injector: Injector,
  grid: Grid,
  failures: Failures,
  say: (sentence: string) => void,
): void {
  let last = '';
  const update = () => {
    const sheet = api.getActiveWorkbook()?.getActiveSheet();
    const range = sheet?.getActiveRange();
    if (!sheet || !range) return;
    const place = {
      sheetId: sheet.getSheetId(),
      row: range.getRow(),
      column: range.getColumn(),
    };
    const message = messageOf(place, grid.read(place), failures);
    // A notice of the page's own stays until the selection or its message moves.
    const now = JSON.stringify([place, message]);
    if (now === last) return;
    last = now;
    say(message);
  };
  injector.get(ICommandService).onCommandExecuted(({ id }) => {
    if (id === SetSelectionsOperation.id || id === SetWorksheetActiveOperation.id) update();
    if (id === SetFormulaCalculationResultMutation.id) void grid.settled().then(update);
  });
}

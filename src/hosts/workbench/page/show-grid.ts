import type { WorkbookImage } from '../../../xlsx/image.ts';
import { askDates } from './ask-dates.ts';
import { answerAcrossSheets } from './across-sheets.ts';
import type { CellsInTurn } from './cells-in-turn.ts';
import { tellTables } from './engine-tables.ts';
import { createFailures } from './failures.ts';
import type { FileHome } from './file-home.ts';
import { firstAnswers } from './first-answers.ts';
import { fitRows } from './fit-rows.ts';
import { findFormulasByRow } from './formula-rows.ts';
import { rememberNoSingleCells } from './fresh-cells.ts';
import { readHeadersAndData } from './headers-and-data.ts';
import type { FunctionHelp } from './function-help.ts';
import { createGrid } from './grid.ts';
import { mountGrid, type GridHost } from './grid-host.ts';
import { guardCommands } from './guard.ts';
import { keepTyping, typingIn } from './keep-typing.ts';
import { markAsRead } from './lists-as-read.ts';
import type { LiveTables } from './live-tables.ts';
import type { Opening } from './opening.ts';
import type { PageFrame } from './page-frame.ts';
import { pasteAsText } from './paste-text.ts';
import type { CellPlace } from './places.ts';
import { type CellFunctions, registerFunctions } from './register-functions.ts';
import { restDrawing } from './rest-drawing.ts';
import { followSelection, selecting } from './selection.ts';
import { tellShownBook } from './shown-books.ts';
import { snapshotOf } from './snapshot.ts';
import { offerUndo } from './undo-buttons.ts';

/** What a grid is shown of, and what it needs. */
export interface ToShow {
  readonly image: WorkbookImage;
  /** The workbook's cells, which the grid takes over. */
  readonly sheets: CellsInTurn;
  readonly tables: LiveTables;
  readonly functions: CellFunctions;
  readonly help: readonly FunctionHelp[];
  readonly home: Pick<FileHome, 'readsOnly'>;
  readonly frame: Pick<PageFrame, 'say'>;
  readonly opening: Opening;
}

/** The grid on the page, with the workbook's cells in it. */
export interface ShownGrid {
  /** Selects a cell, ready to be typed in. */
  select(place: CellPlace): void;
  /** Whether a cell is being typed in. */
  isTyping(): boolean;
}

/**
 * Shows the workbook as it was read in a grid and lets the functions answer, then hands the cells over to it, with
 * all that was written meanwhile. Nobody can change a cell in it before, so that it can be taken off again at any step.
 */
export async function showGrid(shown: ToShow): Promise<ShownGrid> {
  const snapshot = await snapshotOf(shown.image, shown.opening);
  const host = mountGrid('grid', snapshot);
  try {
    return await fill(host, shown);
  } catch (thrown) {
    host.close();
    throw thrown;
  }
}

async function fill({ api, injector }: GridHost, shown: ToShow): Promise<ShownGrid> {
  const { image, help, functions, frame, opening } = shown;
  restDrawing(injector);
  findFormulasByRow(injector, image);
  readHeadersAndData(injector);
  const grid = createGrid(injector);
  const failures = createFailures();
  // Only now: functions registered before the workbook exists show #NAME?.
  registerFunctions(injector, functions, help, failures);
  answerAcrossSheets(injector, grid.sheetName);
  rememberNoSingleCells();
  const followTables = tellTables(injector, shown.tables);
  await firstAnswers(injector, grid, opening);
  fitRows(injector, image);
  guardCommands(injector, frame.say, () => shown.home.readsOnly);
  keepTyping(injector);
  askDates(injector);
  markAsRead(injector);
  pasteAsText(injector);
  offerUndo(injector);
  followSelection(api, injector, grid, failures, frame.say);
  shown.sheets.handOver(grid);
  followTables();
  opening.finish();
  tellShownBook({ api, grid, failures });
  return { select: selecting(api, injector), isTyping: typingIn(injector) };
}

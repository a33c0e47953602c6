import type { WorkbookImage } from '../../../xlsx/image.ts';
import { newToken } from '../../in-browser.ts';
import { askDates } from './ask-dates.ts';
import { answerAcrossSheets } from './across-sheets.ts';
import { showBackupNews } from './backup-news.ts';
import { createChanges } from './changes.ts';
import { createFailures } from './failures.ts';
import { firstAnswers } from './first-answers.ts';
import { fitRows } from './fit-rows.ts';
import type { FileHome } from './file-home.ts';
import { findFormulasByRow } from './formula-rows.ts';
import { rememberNoSingleCells } from './fresh-cells.ts';
import { readHeadersAndData } from './headers-and-data.ts';
import type { FunctionHelp } from './function-help.ts';
import { createGrid } from './grid.ts';
import { mountGrid, type GridHost } from './grid-host.ts';
import { guardCommands } from './guard.ts';
import { keepTyping, typingIn } from './keep-typing.ts';
import { createKeptTexts } from './kept-texts.ts';
import { guardLeaving } from './leaving.ts';
import { markAsRead } from './lists-as-read.ts';
import { createLiveTables } from './live-tables.ts';
import type { Beside } from './open-workbench.ts';
import type { Opening } from './opening.ts';
import type { PageFrame } from './page-frame.ts';
import { pasteAsText } from './paste-text.ts';
import { registerFunctions } from './register-functions.ts';
import { restDrawing } from './rest-drawing.ts';
import { createSaver } from './saver.ts';
import { followSelection, selecting } from './selection.ts';
import { tellShownBook } from './shown-books.ts';
import { snapshotOf } from './snapshot.ts';
import { offerUndo } from './undo-buttons.ts';
import { createUniverPort } from './univer-port.ts';

/** Everything that opening has brought together. */
export interface ToShow {
  readonly image: WorkbookImage;
  readonly help: readonly FunctionHelp[];
  /** What is kept of the pane's. */
  readonly texts: Readonly<Record<string, string>>;
  readonly beside: Beside;
  readonly home: FileHome;
  readonly frame: PageFrame;
  readonly opening: Opening;
}

/**
 * Shows the workbook in the grid, lets the functions answer, then mounts the pane. Nobody can change a
 * cell before all have answered, so an opening that is stopped leaves nothing unsaved behind.
 */
export async function showWorkbook(shown: ToShow): Promise<void> {
  const snapshot = await snapshotOf(shown.image, shown.opening);
  const host = mountGrid('grid', snapshot);
  try {
    await fill(host, shown);
  } catch (thrown) {
    host.close();
    throw thrown;
  }
}

async function fill({ api, injector }: GridHost, shown: ToShow): Promise<void> {
  const { image, help, beside, home, frame, opening } = shown;
  const texts = createKeptTexts(shown.texts, home);
  restDrawing(injector);
  findFormulasByRow(injector, image);
  readHeadersAndData(injector);
  const grid = createGrid(injector);
  const failures = createFailures();
  // Only now: functions registered before the workbook exists show #NAME?.
  registerFunctions(injector, beside.functions, help, failures);
  answerAcrossSheets(injector, grid.sheetName);
  rememberNoSingleCells();
  const tables = createLiveTables(injector, grid, image);
  const changes = createChanges(grid, tables, image);
  const saver = createSaver(grid, changes, home, image.version, newToken);
  await firstAnswers(injector, grid, opening);
  fitRows(injector, image);
  guardCommands(injector, frame.say, () => home.readsOnly);
  keepTyping(injector);
  askDates(injector);
  markAsRead(injector);
  pasteAsText(injector);
  const letGo = guardLeaving({ saver, texts, isTyping: typingIn(injector) });
  frame.showSaving(saver, letGo);
  showBackupNews(home, saver, letGo);
  home.opened?.(saver, letGo);
  offerUndo(injector);
  followSelection(api, injector, grid, failures, frame.say);
  frame.mountPane(
    beside.makePane(
      createUniverPort({
        grid,
        tables,
        saver,
        select: selecting(api, injector),
        memory: texts,
        brokenNames: image.brokenNames,
      }),
    ),
  );
  opening.finish();
  tellShownBook({ api, grid, failures });
}

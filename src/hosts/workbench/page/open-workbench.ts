import type { HostPort } from '../../../workbook/port.ts';
import { answerAcrossSheets } from './across-sheets.ts';
import { createChanges } from './changes.ts';
import { createFailures } from './failures.ts';
import { fitRows } from './fit-rows.ts';
import { createGrid } from './grid.ts';
import { mountGrid } from './grid-host.ts';
import { guardCommands } from './guard.ts';
import { createLiveTables } from './live-tables.ts';
import './page.css';
import { createPageFrame } from './page-frame.ts';
import { registerFunctions, type CellFunctions } from './register-functions.ts';
import { createSaver } from './saver.ts';
import { followSelection } from './selection.ts';
import { createServerApi } from './server-api.ts';
import { offerTestHandle } from './test-handle.ts';
import { createUniverPort } from './univer-port.ts';

/** Loads the book, shows it in the grid, lets the functions answer, then mounts the pane. */
export async function openWorkbench(
  functions: CellFunctions,
  makePane: (port: HostPort) => HTMLElement,
): Promise<void> {
  const server = createServerApi();
  const frame = createPageFrame();
  try {
    const [image, help] = await Promise.all([server.book(), server.functionHelp()]);
    frame.showBook(image);
    const { api, injector } = mountGrid('grid', image);
    const grid = createGrid(injector);
    const failures = createFailures();
    // Only now: functions registered before the workbook exists show #NAME?.
    registerFunctions(injector, functions, help, failures);
    answerAcrossSheets(injector, grid.sheetName);
    const tables = createLiveTables(injector, grid, image);
    const changes = createChanges(grid, tables, image);
    const saver = createSaver(grid, changes, server, image.version);
    guardCommands(injector, frame.say);
    frame.showSaving(saver);
    frame.offerUndo(injector);
    followSelection(api, injector, grid, failures, frame.say);
    await grid.settled();
    fitRows(injector, image);
    frame.mountPane(makePane(createUniverPort({ grid, tables, saver, fileName: image.fileName })));
    offerTestHandle(api, grid, failures);
  } catch (thrown) {
    frame.showFailure(thrown instanceof Error ? thrown.message : String(thrown));
    throw thrown;
  }
}

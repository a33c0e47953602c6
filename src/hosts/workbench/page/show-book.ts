import type { WorkbookImage } from '../../../xlsx/image.ts';
import { newToken } from '../../in-browser.ts';
import { showBackupNews } from './backup-news.ts';
import { createBookPort } from './book-port.ts';
import { createCellsInTurn } from './cells-in-turn.ts';
import { createChanges } from './changes.ts';
import type { FileHome } from './file-home.ts';
import { createImageCells } from './image-cells.ts';
import { createKeptTexts } from './kept-texts.ts';
import { guardLeaving } from './leaving.ts';
import { createLiveTables } from './live-tables.ts';
import type { Beside } from './open-workbench.ts';
import type { Opening } from './opening.ts';
import type { PageFrame } from './page-frame.ts';
import { createSaver } from './saver.ts';
import { createSheetsWanted } from './sheets-wanted.ts';
import { holdPlainCells } from './plain-tables.ts';
import { createViews } from './views.ts';

/** Everything that reading has brought together. */
export interface BookToShow {
  readonly image: WorkbookImage;
  /** What is kept of the pane's. */
  readonly texts: Readonly<Record<string, string>>;
  readonly beside: Beside;
  readonly home: FileHome;
  readonly frame: PageFrame;
}

/**
 * Shows the pane on the workbook's own cells, as they were read, then its sheets where there is room for both. The
 * pane reads tables only: it waits for the grid where one of them holds a formula, whose answer may be an old one.
 */
export async function showBook(shown: BookToShow): Promise<void> {
  const { image, beside, home, frame } = shown;
  frame.showBook(image);
  const texts = createKeptTexts(shown.texts, home);
  const sheets = createCellsInTurn(createImageCells(image));
  const tables = createLiveTables(sheets, image);
  const changes = createChanges(sheets, tables, image);
  const saver = createSaver(sheets, changes, home, image.version, newToken);
  const isPaneFirst = holdPlainCells(image);
  const bringGrid = async (opening: Opening) => {
    opening.show('Bringing the sheets');
    const [help, { showGrid }] = await Promise.all([
      home.functionHelp(),
      import(/* webpackChunkName: "grid" */ './show-grid.ts'),
    ]);
    const { functions } = beside;
    const there = await showGrid({ image, sheets, tables, functions, help, home, frame, opening });
    // What was recorded before is in the file; the answers that hang on it follow.
    if (saver.isLate) void saver.saveNow();
    return there;
  };
  const grid = createSheetsWanted(bringGrid, isPaneFirst ? WITHOUT_SHEETS : WITH_SHEETS);
  const letGo = guardLeaving({ saver, texts, isTyping: grid.isTyping });
  frame.showSaving(saver, letGo);
  showBackupNews(home, saver, letGo);
  home.opened?.(saver, letGo);
  const views = createViews(grid.bring);
  const pane = beside.makePane(
    createBookPort({
      sheets,
      tables,
      saver,
      async select(place) {
        views.showSheets();
        (await grid.shown()).select(place);
      },
      memory: texts,
      brokenNames: image.brokenNames,
    }),
  );
  if (!isPaneFirst) {
    grid.bring();
    await grid.there;
  }
  frame.mountPane(pane);
  views.begin();
}

const WITHOUT_SHEETS = 'The pane works without them.';
const WITH_SHEETS =
  'The pane waits for them, since a table holds a formula. The file is as it was.';

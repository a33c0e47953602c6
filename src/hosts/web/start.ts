import { openDatabase } from './kept/database.ts';
import { keptBooks } from './kept/kept-books.ts';
import { keepPageOffline } from './new-version.ts';
import { openKept } from './open-kept.ts';
import { chooseWorkbook } from './screen/choose.ts';
import { createNotice } from './screen/elements.ts';
import { countMeIn } from './tabs/hold.ts';
import './web.css';

/** Why this page can't keep a workbook safe here; undefined where it can. */
function obstacle(): string | undefined {
  // A static host sends no header that keeps the page out of others' frames.
  if (window.top !== window.self) return 'Open this page in a tab of its own.';
  if (isSecureContext) return undefined;
  return 'This address is not secure, so the browser keeps nothing here. Open the page by https.';
}

async function start(): Promise<void> {
  const why = obstacle();
  if (why !== undefined) throw new Error(why);
  countMeIn();
  if (await keepPageOffline()) return;
  window.addEventListener('hashchange', () => {
    location.reload();
  });
  const books = keptBooks(await openDatabase());
  const id = location.hash.slice(1);
  if (id !== '' && (await books.get(id)) !== undefined) {
    await openKept(
      books,
      id,
      () => import(/* webpackChunkName: "pane" */ '../workbench/page/beside-grid.ts'),
    );
  } else await chooseWorkbook(books);
}

await start().catch((error: unknown) => {
  createNotice()(error instanceof Error ? error.message : String(error));
  throw error;
});

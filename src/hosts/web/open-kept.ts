import type { Beside } from '../workbench/page/open-workbench.ts';
import { openWorkbench } from '../workbench/page/open-workbench.ts';
import type { Saver } from '../workbench/page/saver.ts';
import { createBrowserHome } from './kept/browser-home.ts';
import type { KeptBooks } from './kept/kept-books.ts';
import { offerNewVersion } from './new-version.ts';
import { button, createNotice } from './screen/elements.ts';
import { createStandingLine } from './screen/standing-line.ts';
import { type Hold, takeHold } from './tabs/hold.ts';
import { createTalk, type Talk } from './tabs/talk.ts';

/** Set by a tab that let a book go, for its own next opening: it shall not take it back. */
const LET_GO = 'pour-ledger let go';

/** Opens a kept workbook: to change where this tab holds it, else to look at. */
export async function openKept(
  books: KeptBooks,
  id: string,
  loadBeside: () => Promise<Beside>,
): Promise<void> {
  const hold = await holdUnlessLetGo(id);
  const talk = createTalk();
  const listeners = new Set<() => void>();
  let readsOnly = hold?.isHeld ? undefined : ELSEWHERE;
  const line = createStandingLine(books, id, () => readsOnly === undefined, Date.now);
  if (readsOnly !== undefined) offerToWorkHere(id, talk);
  hold?.onTaken(() => {
    readsOnly = TAKEN;
    for (const listener of listeners) listener();
    offerToWorkHere(id, talk);
  });
  let leave = (): Promise<boolean> => Promise.resolve(true);
  talk.onNews(id, ({ kind }) => {
    if (kind === 'let go' && hold?.isHeld) void leave().then((left) => left && goAway(id, hold));
  });
  await openWorkbench(
    () =>
      createBrowserHome({
        books,
        id,
        talk,
        readsOnly: () => readsOnly,
        onReadsOnly: (listener) => void listeners.add(listener),
        now: Date.now,
        kept: line.update,
        say: createNotice(),
        opened(saver, letGo) {
          // Who only looks has nothing to lose.
          if (readsOnly !== undefined) letGo();
          line.follow(saver);
          offerNewVersion(saver, letGo);
          leave = () => saveAll(saver, letGo);
        },
      }),
    loadBeside,
  );
}

const ELSEWHERE =
  'This workbook is open in another tab, and only one tab changes it. Here it can be looked at.';
const TAKEN =
  'Another tab has taken this workbook over, since this one did not answer. Here it can be looked at; what was not saved by then is in this page only.';

async function holdUnlessLetGo(id: string): Promise<Hold | undefined> {
  if (sessionStorage.getItem(LET_GO) !== id) return takeHold(id, 'if free');
  sessionStorage.removeItem(LET_GO);
  return undefined;
}

async function saveAll(saver: Saver, letGo: () => void): Promise<boolean> {
  const { kind } = await saver.saveNow();
  const isSafe = kind === 'saved' || !saver.hasUnsaved;
  if (isSafe) letGo();
  return isSafe;
}

function goAway(id: string, hold: Hold): void {
  sessionStorage.setItem(LET_GO, id);
  hold.release();
  location.reload();
}

/** Asks the other tab to save and let go; from one that does not answer the book can be taken. */
function offerToWorkHere(id: string, talk: Talk): void {
  const notice = createNotice();
  const loadAnew = ({ isHeld }: Hold) => {
    if (isHeld) location.reload();
    return isHeld;
  };
  const byForce = button('Take it over without', async () => {
    loadAnew(await takeHold(id, 'by force'));
  });
  const work = button('Work here instead', async () => {
    talk.tell({ kind: 'let go', book: id });
    if (!loadAnew(await takeHold(id, 'wait'))) notice(NO_ANSWER, work, byForce);
  });
  notice(ELSEWHERE, work);
}

const NO_ANSWER =
  'The other tab does not let go: it does not answer, or can’t save. Look into it first; what it has not saved would be lost.';

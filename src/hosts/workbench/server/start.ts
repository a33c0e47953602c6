import { realpath } from 'node:fs/promises';
import { nodeFileSteps } from './file-steps.ts';
import type { Lost } from '../protocol.ts';
import { fileStore } from './file-store.ts';
import { keptTexts } from './kept-texts.ts';
import { ledgerPlace } from './ledger-place.ts';
import { listen } from './listen.ts';
import { listeners } from './listeners.ts';
import { savesMade } from './saves-made.ts';
import { sweep } from './sweep.ts';
import { tellOfFile } from './tell-of-file.ts';
import { watchFile } from './watch-file.ts';
import { workbenchServer } from './workbench-server.ts';

export interface Workbench {
  readonly address: string;
  /** Lets a save under way finish, then stops. */
  close(): Promise<void>;
}

export type Started = Workbench | { readonly kind: 'refused'; readonly sentence: string };

/**
 * Opens a workbook file in a workbench on this machine, at an address that stays the same for that file:
 * what makes it so is kept in `dataFolder`. Refuses a file that cannot be opened.
 */
export async function startWorkbench(
  file: string,
  pageRoot: string,
  dataFolder: string,
  port?: number,
): Promise<Started> {
  // Saving renames a file into place, so a link must first lead to the file it means.
  const path = await realpath(file).catch(() => file);
  // What an earlier run left behind does no harm where it can't be cleared away.
  await sweep(nodeFileSteps, path, Date.now()).catch(() => undefined);
  const place = await ledgerPlace(dataFolder, path);
  const store = fileStore(path, nodeFileSteps, Date.now, await savesMade(place.folder));
  const first = await store.look();
  if (first.kind === 'lost') return { kind: 'refused', sentence: sentenceOf(first, path) };
  const texts = await keptTexts(place.folder);
  const pages = listeners(first);
  const server = workbenchServer({ store, listeners: pages, texts, pageRoot, place });
  const listening = await listen(server, port, place.port);
  const isTaken = port === undefined && place.port !== undefined && place.port !== listening;
  if (isTaken) await place.renew();
  await place.keepPort(listening);
  const look = tellOfFile(store.look, pages.tell);
  const stop = watchFile(path, (occasion) => {
    void look(occasion);
    void store.lookAtBackups().then(pages.tell);
  });
  return {
    address: `http://${place.host}:${listening}/${place.secret}/`,
    async close() {
      stop();
      pages.close();
      await store.idle();
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}

/** Why the file can't be opened, and how its last good state is. */
function sentenceOf({ sentence, backup }: Lost, path: string): string {
  if (backup === undefined) return sentence;
  const when = new Date(backup).toLocaleString('en-GB', {
    dateStyle: 'medium',
    timeStyle: 'short',
  });
  return (
    `${sentence}\nIts state until ${when} is kept. ` +
    `To go back to it: npm start -- --take 1 ${JSON.stringify(path)}`
  );
}

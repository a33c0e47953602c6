import { realpath } from 'node:fs/promises';
import { nodeFileSteps } from './file-steps.ts';
import { fileStore } from './file-store.ts';
import { ledgerPlace } from './ledger-place.ts';
import { listen } from './listen.ts';
import { listeners } from './listeners.ts';
import { sweep } from './sweep.ts';
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
  const store = fileStore(path);
  const first = await store.read();
  if (first.kind === 'refused') return first;
  const place = await ledgerPlace(dataFolder, path);
  const { host, secret: token } = place;
  const pages = listeners();
  const server = workbenchServer({ store, listeners: pages, pageRoot, host, token });
  const listening = await listen(server, port, place.port);
  await place.keepPort(listening);
  const stop = watchFile(path, () => {
    void store.changedOutside().then((version) => {
      if (version !== undefined) pages.tell({ kind: 'changed outside', version });
    });
  });
  return {
    address: `http://${host}:${listening}/${token}/`,
    async close() {
      stop();
      pages.close();
      await store.idle();
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}

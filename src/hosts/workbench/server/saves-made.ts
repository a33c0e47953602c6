import { join } from 'node:path';
import { isRecord } from '../../../domain/kernel/is-record.ts';
import { readOwn, writeOwn } from './own-file.ts';

/**
 * Which version each of the last saves was to make, by the save's id. A page that heard no answer asks
 * again with the same id: where its version stands, the save was made.
 */
export interface SavesMade {
  versionOf(id: string): string | undefined;
  /** Keeps it before the save is made, so that a server ended just then still knows. */
  intend(id: string, version: string): Promise<void>;
}

/** More than any number of pages can wait for answers. */
const MOST = 50;

/** Reads what is kept in a ledger's folder. */
export async function savesMade(folder: string): Promise<SavesMade> {
  const file = join(folder, 'saves.json');
  const known = await readOwn(file);
  return remembering(Array.isArray(known) ? known.filter(isSave) : [], (saves) =>
    writeOwn(file, JSON.stringify(saves)),
  );
}

/** Forgets with the server. */
export const passingSaves = (): SavesMade => remembering([], () => Promise.resolve());

interface Save {
  readonly id: string;
  readonly version: string;
}

function remembering(
  known: readonly Save[],
  write: (saves: readonly Save[]) => Promise<void>,
): SavesMade {
  let saves = known;
  return {
    versionOf: (id) => saves.find((save) => save.id === id)?.version,
    async intend(id, version) {
      saves = [{ id, version }, ...saves.filter((save) => save.id !== id)].slice(0, MOST);
      // A save matters more than what is known of it.
      await write(saves).catch(() => undefined);
    },
  };
}

const isSave = (value: unknown): value is Save =>
  isRecord(value) && typeof value['id'] === 'string' && typeof value['version'] === 'string';

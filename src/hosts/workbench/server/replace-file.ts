import { basename, dirname, extname, join } from 'node:path';
import { versionOf } from '../../xlsx/version.ts';
import type { FileSteps } from './file-steps.ts';

export type Replaced =
  | { readonly kind: 'replaced' }
  /** Someone else wrote the file meanwhile; it was left alone. */
  | { readonly kind: 'changed outside'; readonly version: string };

/**
 * Puts `next` in the place of `last` so that at every instant the file is whole, old or new: the old
 * bytes go to the backup, the new ones to a file beside it that is read back, then renamed over.
 * Throws what the file system throws; the old file then still stands, unless the rename was done.
 */
export async function replaceFile(
  steps: FileSteps,
  path: string,
  last: Uint8Array,
  next: Uint8Array,
): Promise<Replaced> {
  const mode = await steps.mode(path);
  await writeWhole(steps, backupPath(path), last, mode);
  const fresh = temporaryPath(path);
  try {
    await writeSynced(steps, fresh, next, mode);
    const version = versionOf(await steps.read(path));
    if (version !== versionOf(last)) {
      await steps.remove(fresh);
      return { kind: 'changed outside', version };
    }
    await steps.rename(fresh, path);
  } catch (error) {
    await removeQuietly(steps, fresh);
    throw error;
  }
  await syncFolderQuietly(steps, dirname(path));
  return { kind: 'replaced' };
}

/** "book.backup.xlsx" beside "book.xlsx". */
export function backupPath(path: string): string {
  const extension = extname(path);
  return join(dirname(path), `${basename(path, extension)}.backup${extension}`);
}

/** Writes a file whole or not at all: beside its place first, then renamed. */
async function writeWhole(
  steps: FileSteps,
  path: string,
  bytes: Uint8Array,
  mode: number,
): Promise<void> {
  const fresh = temporaryPath(path);
  try {
    await writeSynced(steps, fresh, bytes, mode);
    await steps.rename(fresh, path);
  } catch (error) {
    await removeQuietly(steps, fresh);
    throw error;
  }
}

async function writeSynced(steps: FileSteps, path: string, bytes: Uint8Array, mode: number) {
  const file = await steps.create(path, mode);
  try {
    await file.write(bytes);
    await file.sync();
  } finally {
    await file.close();
  }
  if (versionOf(await steps.read(path)) !== versionOf(bytes)) {
    throw new Error('The disk gave back other bytes than were written.');
  }
}

function temporaryPath(path: string): string {
  return join(dirname(path), `.${basename(path)}.saving-${process.pid}`);
}

async function removeQuietly(steps: FileSteps, path: string): Promise<void> {
  // The first failure is the one to report.
  await steps.remove(path).catch(() => undefined);
}

async function syncFolderQuietly(steps: FileSteps, folder: string): Promise<void> {
  // Some systems cannot sync a folder; the rename itself is done.
  await steps.syncFolder(folder).catch(() => undefined);
}

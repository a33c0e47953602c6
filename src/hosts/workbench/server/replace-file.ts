import { randomBytes } from 'node:crypto';
import { basename, dirname, join } from 'node:path';
import { versionOf } from '../../../xlsx/version.ts';
import { type Backup, keepBackup, makeBackupFolder } from './backups.ts';
import { FileRefused } from './file-sentence.ts';
import type { FileSteps } from './file-steps.ts';
import {
  refuseOtherOwner,
  refuseWhatReplacingBreaks,
  refuseWhileOpenElsewhere,
} from './may-replace.ts';

export type Replaced =
  /** `backup` is the old state; undefined when it could not be moved among them. */
  | { readonly kind: 'replaced'; readonly backup: Backup | undefined }
  /** Someone else wrote the file meanwhile; theirs stands. */
  | { readonly kind: 'changed outside'; readonly version: string };

/**
 * Puts `next` in the place of `last` so that at every instant the file is whole, old or new. The new
 * bytes go to a file beside it that is read back; then the two change places, and what came out is looked
 * at: is it not `last`, it is put back. What came out becomes a backup.
 * Throws what the file system throws, and `FileRefused`; the old file then still stands.
 */
export async function replaceFile(
  steps: FileSteps,
  path: string,
  last: Uint8Array,
  next: Uint8Array,
  now: number,
): Promise<Replaced> {
  const facts = await steps.look(path);
  refuseWhatReplacingBreaks(path, facts);
  await refuseWhileOpenElsewhere(steps, path);
  await makeBackupFolder(steps, path);
  const fresh = temporaryPath(path);
  let settled: Settled;
  try {
    await writeSynced(steps, fresh, next, path);
    refuseOtherOwner(path, facts, await steps.look(fresh));
    settled = await changePlaces(steps, path, fresh, versionOf(last), versionOf(next));
    settled ??= await renameOver(steps, path, fresh, last, next);
  } catch (error) {
    await removeIfHolds(steps, fresh, next);
    throw error;
  }
  await syncFolderQuietly(steps, dirname(path));
  if (settled.version !== versionOf(next)) {
    await steps.remove(settled.out).catch(() => undefined);
    return { kind: 'changed outside', version: settled.version };
  }
  // The file is replaced, whatever becomes of its backup: the next start finds it where it is.
  const backup = await keepBackup(steps, path, settled.out, now).catch(() => undefined);
  return { kind: 'replaced', backup };
}

/** Puts a file where none stands, whole or not at all, with the attributes of `like`. */
export async function writeNew(
  steps: FileSteps,
  path: string,
  bytes: Uint8Array,
  like: string,
): Promise<void> {
  const fresh = temporaryPath(path);
  try {
    await writeSynced(steps, fresh, bytes, like);
    await steps.moveNew(fresh, path);
  } catch (error) {
    await removeIfHolds(steps, fresh, bytes);
    throw error;
  }
  await syncFolderQuietly(steps, dirname(path));
}

/** Where a file stands while it is written: a name that nobody can know before. */
const temporaryPath = (path: string): string =>
  join(
    dirname(path),
    `.${basename(path)}.saving-${String(process.pid)}-${randomBytes(8).toString('hex')}`,
  );

/** What stands in the file's place at last, and where that which came out of it lies. */
type Settled = { readonly version: string; readonly out: string } | undefined;

/**
 * Lets the new file and the old change places until what comes out is what we last knew there: whoever
 * else put a file there meanwhile has the last word. Undefined where the system can't do it.
 */
async function changePlaces(
  steps: FileSteps,
  path: string,
  fresh: string,
  last: string,
  next: string,
): Promise<Settled> {
  let [standing, held] = [last, next];
  for (let isFirst = true; ; isFirst = false) {
    try {
      if (!(await steps.exchange(fresh, path))) return undefined;
    } catch (error) {
      if (isFirst) throw error;
      // The name is free by now: someone took ours away, and what they had put there goes back.
      await steps.moveNew(fresh, path);
      return { version: held, out: fresh };
    }
    const out = await versionOrPutBack(steps, path, fresh);
    if (out === standing) return { version: held, out: fresh };
    [standing, held] = [held, out];
  }
}

async function versionOrPutBack(steps: FileSteps, path: string, fresh: string): Promise<string> {
  try {
    return versionOf(await steps.read(fresh));
  } catch (error) {
    // What can't be looked at can't be judged.
    await steps.exchange(fresh, path);
    throw error;
  }
}

/** How often a file is looked at again whose bytes stay the same while something about it changes. */
const LOOKS = 5;

/** Where names can't change places: the old bytes are copied aside, and the rename follows a last look at once. */
async function renameOver(
  steps: FileSteps,
  path: string,
  fresh: string,
  last: Uint8Array,
  next: Uint8Array,
): Promise<NonNullable<Settled>> {
  const aside = temporaryPath(path);
  try {
    await writeSynced(steps, aside, last, path);
    for (let looks = 0; looks < LOOKS; looks += 1) {
      const { mark } = await steps.look(path);
      const bytes = await steps.read(path);
      if (versionOf(bytes) !== versionOf(last)) {
        await steps.remove(aside);
        return { version: versionOf(bytes), out: fresh };
      }
      if (await steps.renameOver(fresh, path, mark)) {
        return { version: versionOf(next), out: aside };
      }
    }
  } catch (error) {
    await removeIfHolds(steps, aside, last);
    throw error;
  }
  throw new FileRefused(`"${basename(path)}" is being changed by another program. Save again.`);
}

/** Writes a new file, with the attributes of `like`, and reads it back. */
async function writeSynced(steps: FileSteps, path: string, bytes: Uint8Array, like: string) {
  const file = await steps.create(path, like);
  try {
    await file.write(bytes);
    await file.sync();
  } finally {
    await file.close();
  }
  if (versionOf(await steps.read(path)) !== versionOf(bytes)) {
    await steps.remove(path);
    throw new Error('The disk gave back other bytes than were written.');
  }
}

/** Takes our own bytes away again. Anything else under that name is left for the next start to look at. */
async function removeIfHolds(steps: FileSteps, path: string, bytes: Uint8Array): Promise<void> {
  // The first failure is the one to report.
  const standing = await steps.read(path).catch(() => undefined);
  if (standing === undefined || !isStartOf(standing, bytes)) return;
  await steps.remove(path).catch(() => undefined);
}

const isStartOf = (part: Uint8Array, whole: Uint8Array): boolean =>
  Buffer.compare(part, whole.subarray(0, part.length)) === 0;

async function syncFolderQuietly(steps: FileSteps, folder: string): Promise<void> {
  // Some systems cannot sync a folder; the rename itself is done.
  await steps.syncFolder(folder).catch(() => undefined);
}

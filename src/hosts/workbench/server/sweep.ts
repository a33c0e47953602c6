import { basename, dirname, join } from 'node:path';
import { readWorkbook } from '../../../xlsx/read/read-workbook.ts';
import { versionOf } from '../../../xlsx/version.ts';
import { backupsOf, keepBackup, makeBackupFolder } from './backups.ts';
import type { FileSteps } from './file-steps.ts';

/** Whether a process of that number is running. */
export type IsRunning = (process: number) => boolean;

/**
 * Clears away what saves left behind that were killed: half-written files go; a whole workbook that
 * stands nowhere else, perhaps the last state of the file, becomes a backup.
 */
export async function sweep(
  steps: FileSteps,
  path: string,
  now: number,
  isRunning: IsRunning = isProcess,
): Promise<void> {
  const left = (await steps.list(dirname(path))).filter((name) => {
    const process = processOf(name, basename(path));
    return process !== undefined && !isRunning(process);
  });
  for (const name of left) await sweepOne(steps, path, join(dirname(path), name), now);
}

async function sweepOne(steps: FileSteps, path: string, one: string, now: number): Promise<void> {
  // What can't be read, or leads elsewhere, is not ours to judge.
  const bytes = await steps.read(one).catch(() => undefined);
  if (bytes === undefined) return;
  if (readWorkbook(bytes, '').kind === 'refused' || (await isKnown(steps, path, bytes))) {
    await steps.remove(one);
    return;
  }
  await makeBackupFolder(steps, path);
  await keepBackup(steps, path, one, now);
}

async function isKnown(steps: FileSteps, path: string, bytes: Uint8Array): Promise<boolean> {
  const version = versionOf(bytes);
  const others = [path, ...(await backupsOf(steps, path)).map((backup) => backup.path)];
  for (const other of others) {
    const standing = await steps.read(other).catch(() => undefined);
    if (standing !== undefined && versionOf(standing) === version) return true;
  }
  return false;
}

/** The process that wrote a temporary file of this workbook; undefined for any other file. */
function processOf(name: string, book: string): number | undefined {
  const start = `.${book}.saving-`;
  const number = name.startsWith(start)
    ? /^(\d{1,10})(?:-[0-9a-f]+)?$/.exec(name.slice(start.length))?.[1]
    : undefined;
  return number === undefined ? undefined : Number(number);
}

function isProcess(number: number): boolean {
  try {
    // Signal 0 only asks.
    return process.kill(number, 0);
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}

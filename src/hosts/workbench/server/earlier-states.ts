import { basename } from 'node:path';
import { readWorkbook } from '../../../xlsx/read/read-workbook.ts';
import { type Backup, backupsOf } from './backups.ts';
import { fileSentence } from './file-sentence.ts';
import { codeOf, type FileSteps } from './file-steps.ts';
import { replaceFile, writeNew } from './replace-file.ts';

/** What was done about a workbook's backups, or why nothing was. */
export interface BackupsTold {
  readonly ok: boolean;
  readonly sentence: string;
}

/** With the state that gave way, and the bytes that it held. */
export interface TookEarlier extends BackupsTold {
  readonly replaced?: { readonly backup: Backup; readonly bytes: Uint8Array };
}

/** The backups of a workbook in words, numbered from the newest. */
export async function listEarlier(steps: FileSteps, path: string): Promise<BackupsTold> {
  const backups = await backupsOf(steps, path);
  if (backups.length === 0) {
    return { ok: true, sentence: `No earlier state of ${path} is kept yet.` };
  }
  const lines = backups.map(({ path: one, time }, at) => {
    const when = new Date(time).toLocaleString('en-GB', {
      dateStyle: 'medium',
      timeStyle: 'short',
    });
    return `  ${String(at + 1).padStart(2)}  until ${when}  ${one}`;
  });
  const sentence = [
    `Earlier states of ${path}, the newest first:`,
    ...lines,
    'To look at one, open it as any workbook: npm start -- "its path".',
    'To go back to number 1: npm start -- --take 1, with the workbook’s path behind it if it is your own. What stands now is kept as well.',
  ].join('\n');
  return { ok: true, sentence };
}

/** Puts a backup in the place of the workbook, which becomes a backup itself. `number` counts from 1, the newest. */
export async function takeEarlier(
  steps: FileSteps,
  path: string,
  number: number,
  now: number,
): Promise<TookEarlier> {
  const backups = await backupsOf(steps, path);
  const wanted = backups[number - 1];
  if (wanted !== undefined) return take(steps, path, wanted, now);
  const sentence = `There is no number ${String(number)} among the ${String(backups.length)} earlier states of ${path}; npm start -- --backups lists them.`;
  return { ok: false, sentence };
}

/** The same for the backup that was the workbook until that time, in milliseconds. */
export async function takeStateUntil(
  steps: FileSteps,
  path: string,
  until: number,
  now: number,
): Promise<TookEarlier> {
  const wanted = (await backupsOf(steps, path)).find(({ time }) => time === until);
  if (wanted !== undefined) return take(steps, path, wanted, now);
  return { ok: false, sentence: 'That earlier state is not there any more.' };
}

async function take(
  steps: FileSteps,
  path: string,
  wanted: Backup,
  now: number,
): Promise<TookEarlier> {
  try {
    const bytes = await steps.read(wanted.path);
    const read = readWorkbook(bytes, basename(wanted.path));
    if (read.kind === 'refused') return { ok: false, sentence: read.sentence };
    return await putBack(steps, path, wanted.path, bytes, now);
  } catch (error) {
    return { ok: false, sentence: fileSentence(error, path) };
  }
}

async function putBack(
  steps: FileSteps,
  path: string,
  from: string,
  bytes: Uint8Array,
  now: number,
): Promise<TookEarlier> {
  const done = { ok: true, sentence: `${path} is again as it was in ${from}.` };
  const last = await readIfThere(steps, path);
  if (last === undefined) {
    await writeNew(steps, path, bytes, from);
    return done;
  }
  const replaced = await replaceFile(steps, path, last, bytes, now);
  if (replaced.kind !== 'replaced')
    return {
      ok: false,
      sentence: `${path} is just being changed by another program. Try again.`,
    };
  const { backup } = replaced;
  return backup === undefined ? done : { ...done, replaced: { backup, bytes: last } };
}

async function readIfThere(steps: FileSteps, path: string): Promise<Uint8Array | undefined> {
  try {
    return await steps.read(path);
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return undefined;
    throw error;
  }
}

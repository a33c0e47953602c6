import { basename } from 'node:path';
import type { SaveAnswer, SaveRequest } from '../../../xlsx/image.ts';
import { checkedPatch } from '../../../xlsx/patch/checked-patch.ts';
import { readWorkbook, type WorkbookRead } from '../../../xlsx/read/read-workbook.ts';
import type { Refused } from '../../../xlsx/refusal.ts';
import { versionOf } from '../../../xlsx/version.ts';
import type { BackupNews, FileNews } from '../protocol.ts';
import { type Backup, backupsOf } from './backups.ts';
import {
  takeEarlier,
  takeStateUntil,
  type BackupsTold,
  type TookEarlier,
} from './earlier-states.ts';
import { fileSentence } from './file-sentence.ts';
import { nodeFileSteps, type FileSteps } from './file-steps.ts';
import { replaceFile } from './replace-file.ts';
import { passingSaves, type SavesMade } from './saves-made.ts';
import { watchedBackups } from './watched-backups.ts';

/** One workbook file: read, saved and watched, one thing at a time. */
export interface FileStore {
  read(): Promise<WorkbookRead | Refused>;
  save(request: SaveRequest): Promise<SaveAnswer>;
  /** What stands in the file's place now. */
  look(): Promise<FileNews>;
  /** Puts a backup in the file's place: the one that was it until that time, or the newest. */
  takeBackup(until?: number): Promise<BackupsTold>;
  /** What became of the states that were replaced. */
  lookAtBackups(): Promise<BackupNews>;
  /** The maker leaves what another program wrote into the backup of that time. */
  leaveBackup(until: number): Promise<void>;
  /** Resolves when nothing is under way. */
  idle(): Promise<void>;
}

/**
 * Opens a store on a file; `steps` are the file system's, `now` gives the milliseconds since 1970, and
 * `saves` is what is known of earlier saves.
 */
export function fileStore(
  path: string,
  steps: FileSteps = nodeFileSteps,
  now: () => number = Date.now,
  saves: SavesMade = passingSaves(),
): FileStore {
  /** The workbook as last read or saved, so that opening it again need not take it apart again. */
  let newest: WorkbookRead | undefined;
  const replaced = watchedBackups(steps);
  let last: Promise<unknown> = Promise.resolve();
  const inTurn = <T>(work: () => Promise<T>): Promise<T> => {
    const next = last.then(work);
    last = next.catch(() => undefined);
    return next;
  };

  const read = async (): Promise<WorkbookRead | Refused> => {
    const answer = await readOver(steps, path, newest);
    if (answer.kind === 'refused') return answer;
    newest = answer;
    return answer;
  };

  const save = async (request: SaveRequest): Promise<SaveAnswer> => {
    const saved = await saveOver(steps, path, request, saves, now());
    newest = saved.read ?? newest;
    if (saved.backup) replaced.add(saved.backup, saved.last);
    return saved.answer;
  };

  const takeBackup = async (until?: number): Promise<BackupsTold> => {
    const took = await takeOne(steps, path, until, now());
    if (took.replaced) replaced.add(took.replaced.backup, took.replaced.bytes);
    if (took.ok && until !== undefined) replaced.settle(until);
    return took;
  };

  return {
    read: () => inTurn(read),
    save: (request) => inTurn(() => save(request)),
    look: () => inTurn(async () => newsOf(steps, path, await read())),
    takeBackup: (until) => inTurn(() => takeBackup(until)),
    lookAtBackups: () => inTurn(() => replaced.look()),
    leaveBackup: (until) => inTurn(() => Promise.resolve(replaced.settle(until))),
    idle: async () => {
      await last;
    },
  };
}

async function newsOf(
  steps: FileSteps,
  path: string,
  found: WorkbookRead | Refused,
): Promise<FileNews> {
  if (found.kind === 'read') return { kind: 'stands', version: found.workbook.version };
  const [backup] = await backupsOf(steps, path).catch(() => []);
  return { kind: 'lost', sentence: found.sentence, ...(backup ? { backup: backup.time } : {}) };
}

const takeOne = (
  steps: FileSteps,
  path: string,
  until: number | undefined,
  now: number,
): Promise<TookEarlier> =>
  until === undefined ? takeEarlier(steps, path, 1, now) : takeStateUntil(steps, path, until, now);

async function readOver(
  steps: FileSteps,
  path: string,
  newest: WorkbookRead | undefined,
): Promise<WorkbookRead | Refused> {
  try {
    const bytes = await steps.read(path);
    return newest?.workbook.version === versionOf(bytes)
      ? newest
      : readWorkbook(bytes, basename(path));
  } catch (error) {
    return { kind: 'refused', sentence: fileSentence(error, path) };
  }
}

type Saved =
  | { readonly answer: SaveAnswer; readonly read?: undefined; readonly backup?: undefined }
  | {
      readonly answer: SaveAnswer;
      /** The saved file, read back. */
      readonly read: WorkbookRead;
      /** The state before, where it could be kept, and what it held. */
      readonly backup: Backup | undefined;
      readonly last: Uint8Array;
    };

async function saveOver(
  steps: FileSteps,
  path: string,
  { id, baseVersion, after, edits }: SaveRequest,
  saves: SavesMade,
  now: number,
): Promise<Saved> {
  try {
    const current = await steps.read(path);
    const version = versionOf(current);
    if (version === saves.versionOf(id)) return { answer: { kind: 'saved', version } };
    if (version !== baseVersion && version !== (after && saves.versionOf(after))) {
      return { answer: changedOutside(current, path) };
    }
    const next = checkedPatch(current, edits, basename(path));
    if (next.kind === 'refused') return { answer: next };
    await saves.intend(id, next.read.workbook.version);
    const replaced = await replaceFile(steps, path, current, next.bytes, now);
    if (replaced.kind === 'changed outside') return { answer: replaced };
    const { read } = next;
    return {
      answer: { kind: 'saved', version: read.workbook.version },
      read,
      backup: replaced.backup,
      last: current,
    };
  } catch (error) {
    return { answer: { kind: 'refused', sentence: fileSentence(error, path) } };
  }
}

/** What to say of a file that is no longer the one that was read: another stands there, or none that can be read. */
function changedOutside(current: Uint8Array, path: string): SaveAnswer {
  const read = readWorkbook(current, basename(path));
  return read.kind === 'refused'
    ? read
    : { kind: 'changed outside', version: read.workbook.version };
}

import { basename, dirname, extname, join } from 'node:path';
import { FileRefused } from './file-sentence.ts';
import { codeOf, type FileSteps } from './file-steps.ts';

/** An earlier state of the workbook. */
export interface Backup {
  readonly path: string;
  /** When it was replaced, in milliseconds since 1970. */
  readonly time: number;
}

/** "book.backups", beside "book.xlsx". */
export const backupFolder = (path: string): string =>
  join(dirname(path), `${basename(path, extname(path))}.backups`);

/** Makes sure of a place for backups before anything is replaced, and answers it. */
export async function makeBackupFolder(steps: FileSteps, path: string): Promise<string> {
  const folder = backupFolder(path);
  try {
    await steps.makeFolder(folder);
  } catch (error) {
    if (codeOf(error) !== 'EEXIST') throw error;
    throw new FileRefused(
      `"${basename(path)}" was not saved: its backups would go into a folder "${basename(folder)}", and a file of that name stands beside it. Give that file another name.`,
    );
  }
  return folder;
}

/**
 * Moves the state that was just replaced in among the backups, under its date, never over another file;
 * then takes out those that are one too many.
 */
export async function keepBackup(
  steps: FileSteps,
  path: string,
  from: string,
  now: number,
): Promise<Backup> {
  const folder = backupFolder(path);
  // Two states of one second: the later one is a second further on.
  for (let second = Math.floor(now / 1000); ; second += 1) {
    const to = join(folder, nameAt(second * 1000, extname(path)));
    try {
      await steps.moveNew(from, to);
    } catch (error) {
      if (codeOf(error) === 'EEXIST') continue;
      throw error;
    }
    await thin(steps, path, now);
    return { path: to, time: second * 1000 };
  }
}

/** All backups of a workbook, the newest first. */
export async function backupsOf(steps: FileSteps, path: string): Promise<Backup[]> {
  const folder = backupFolder(path);
  const names = await steps.list(folder);
  return names
    .flatMap((name) => {
      const time = timeOf(name, extname(path));
      return time === undefined ? [] : [{ path: join(folder, name), time }];
    })
    .sort((a, b) => b.time - a.time);
}

/** Times stand in names in UTC, so that no clock change puts two in a wrong order. */
const nameAt = (time: number, extension: string): string =>
  `${new Date(time).toISOString().slice(0, 19).replaceAll(':', '.')}Z${extension}`;

function timeOf(name: string, extension: string): number | undefined {
  const [, day, hour, minute, second] =
    /^(\d{4}-\d\d-\d\dT)(\d\d)\.(\d\d)\.(\d\d)Z/.exec(name) ?? [];
  const time = Date.parse(`${day ?? ''}${hour ?? ''}:${minute ?? ''}:${second ?? ''}Z`);
  return nameAtOrBlank(time, extension) === name ? time : undefined;
}

const nameAtOrBlank = (time: number, extension: string): string =>
  Number.isNaN(time) ? '' : nameAt(time, extension);

async function thin(steps: FileSteps, path: string, now: number): Promise<void> {
  const backups = await backupsOf(steps, path);
  for (const { path: one, time } of tooMany(backups, now)) {
    try {
      // One that was written into since it came here is the maker's own by now.
      const { kind, written } = await steps.look(one);
      if (kind === 'file' && written < time + 1000) await steps.remove(one);
    } catch {
      // One too many does no harm.
    }
  }
}

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;

/** The newest states, all kept. */
const ALL_OF_LAST = 10;

/**
 * Which backups may go: of the older ones the first of each hour stays for two days and the first of
 * each day for two months, as the workbook stood before that hour's or day's work. Newest first.
 */
export function tooMany<T extends Pick<Backup, 'time'>>(backups: readonly T[], now: number): T[] {
  const older = backups.slice(ALL_OF_LAST);
  const isFirstOf = (span: number, index: number): boolean =>
    Math.floor((older[index]?.time ?? 0) / span) !==
    Math.floor((older[index + 1]?.time ?? -span) / span);
  return older.filter(({ time }, index) => {
    const age = now - time;
    const stays =
      (age < 2 * DAY_MS && isFirstOf(HOUR_MS, index)) ||
      (age < 60 * DAY_MS && isFirstOf(DAY_MS, index));
    return !stays;
  });
}

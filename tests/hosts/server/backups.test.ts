import { mkdirSync, readdirSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  backupFolder,
  backupsOf,
  keepBackup,
  makeBackupFolder,
  tooMany,
} from '../../../src/hosts/workbench/server/backups.ts';
import { nodeFileSteps } from '../../../src/hosts/workbench/server/file-steps.ts';
import { sweep } from '../../../src/hosts/workbench/server/sweep.ts';
import { bookBytes, bookFile, bytesAt } from './support.ts';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const NOON = Date.UTC(2026, 10, 28, 12);

describe('the backups that stay', () => {
  const times = fc
    .uniqueArray(fc.integer({ min: 0, max: 100 * 24 * 60 }), { maxLength: 300 })
    .map((minutes) =>
      minutes.map((minute) => ({ time: NOON - minute * 60_000 })).sort((a, b) => b.time - a.time),
    );

  it('are the newest ten, and the first of each hour of two days and each day of two months', () => {
    fc.assert(
      fc.property(times, (backups) => {
        const gone = new Set(tooMany(backups, NOON));
        const stay = backups.filter((backup) => !gone.has(backup));
        expect(stay.slice(0, 10)).toEqual(backups.slice(0, 10));
        const firsts = (span: number, age: number) =>
          backups.filter(
            ({ time }, at) =>
              NOON - time < age &&
              Math.floor(time / span) !== Math.floor((backups[at + 1]?.time ?? -span) / span),
          );
        for (const first of [...firsts(HOUR, 2 * DAY), ...firsts(DAY, 60 * DAY)]) {
          expect(stay).toContain(first);
        }
        expect(stay.length).toBeLessThanOrEqual(10 + 49 + 61);
      }),
    );
  });

  it('stay when nothing new came: taking out twice takes no more', () => {
    fc.assert(
      fc.property(times, (backups) => {
        const gone = new Set(tooMany(backups, NOON));
        const stay = backups.filter((backup) => !gone.has(backup));
        expect(tooMany(stay, NOON)).toEqual([]);
      }),
    );
  });
});

describe('keeping backups', () => {
  it('writes over nothing, is seen by the owner only, and takes out only what is ours', async () => {
    const { folder, path } = bookFile();
    await makeBackupFolder(nodeFileSteps, path);
    expect(statSync(backupFolder(path)).mode & 0o777).toBe(0o700);
    const own = join(backupFolder(path), 'before the fair.xlsx');
    writeFileSync(own, 'the maker’s own');
    for (let minute = 0; minute < 30; minute += 1) {
      const time = NOON + minute * 60_000;
      const from = join(folder, 'from');
      writeFileSync(from, String(minute));
      utimesSync(from, time / 1000, time / 1000);
      await keepBackup(nodeFileSteps, path, from, time);
      // One of them is opened and saved in Excel.
      const [newest] = await backupsOf(nodeFileSteps, path);
      if (minute === 15) utimesSync(newest?.path ?? '', time / 1000 + 60, time / 1000 + 60);
    }
    const kept = (await backupsOf(nodeFileSteps, path)).map(({ path: one }) =>
      Buffer.from(bytesAt(one)).toString(),
    );
    const newestTen = Array.from({ length: 10 }, (_, at) => String(29 - at));
    expect(kept).toEqual([...newestTen, '15', '0']);
    expect(Buffer.from(bytesAt(own)).toString()).toBe('the maker’s own');
  });

  it('gives two of one second names of their own', async () => {
    const { folder, path } = bookFile();
    mkdirSync(backupFolder(path));
    for (const content of ['one', 'two']) {
      writeFileSync(join(folder, 'from'), content);
      await keepBackup(nodeFileSteps, path, join(folder, 'from'), NOON);
    }
    expect(readdirSync(backupFolder(path)).sort()).toEqual([
      '2026-11-28T12.00.00Z.xlsx',
      '2026-11-28T12.00.01Z.xlsx',
    ]);
  });
});

describe('what killed saves left behind', () => {
  it('goes when half written or known, and is a backup when it stands nowhere else', async () => {
    const { folder, path } = bookFile('old');
    const left = (process: number, bytes: Uint8Array) => {
      writeFileSync(join(folder, `.book.xlsx.saving-${String(process)}-00ff`), bytes);
    };
    left(1, bookBytes('lost').subarray(0, 100));
    left(2, bookBytes('old'));
    left(3, bookBytes('lost'));
    left(4, bookBytes('being saved'));
    writeFileSync(join(folder, '.book.xlsx.saving-5'), bookBytes('of an older release'));
    writeFileSync(join(folder, '.book.xlsx.saving-notes'), 'the maker’s own');
    await sweep(nodeFileSteps, path, NOON, (process) => process === 4);
    expect(readdirSync(folder).sort()).toEqual([
      '.book.xlsx.saving-4-00ff',
      '.book.xlsx.saving-notes',
      'book.backups',
      'book.xlsx',
    ]);
    const kept = (await backupsOf(nodeFileSteps, path)).map((backup) => bytesAt(backup.path));
    expect(kept).toEqual([bookBytes('of an older release'), bookBytes('lost')]);
  });
});

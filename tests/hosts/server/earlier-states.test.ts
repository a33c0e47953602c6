import { readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { backupsOf } from '../../../src/hosts/workbench/server/backups.ts';
import { listEarlier, takeEarlier } from '../../../src/hosts/workbench/server/earlier-states.ts';
import { fileStore } from '../../../src/hosts/workbench/server/file-store.ts';
import { nodeFileSteps } from '../../../src/hosts/workbench/server/file-steps.ts';
import { startWorkbench } from '../../../src/hosts/workbench/server/start.ts';
import { versionOf } from '../../../src/xlsx/version.ts';
import { bookBytes, bookFile, bytesAt, firstOf, saveRequest, testFolder } from './support.ts';

/** A workbook saved three times, a day apart: "old", "one", "two", "three". */
async function savedBook() {
  const { folder, path } = bookFile();
  let day = Date.UTC(2026, 10, 20);
  for (const value of ['one', 'two', 'three']) {
    day += 24 * 3_600_000;
    await fileStore(path, nodeFileSteps, () => day).save(
      saveRequest(versionOf(bytesAt(path)), value),
    );
  }
  return { folder, path, day };
}

const valuesOf = async (path: string) =>
  (await backupsOf(nodeFileSteps, path)).map((backup) => firstOf(backup.path));

describe('earlier states', () => {
  it('are listed from the newest, each with its path', async () => {
    const { path } = await savedBook();
    const { ok, sentence } = await listEarlier(nodeFileSteps, path);
    expect(ok).toBe(true);
    const lines = sentence.split('\n').filter((line) => /^ {2}/.test(line));
    expect(lines.map((line) => firstOf(/ (\/.*)$/.exec(line)?.[1] ?? ''))).toEqual([
      'two',
      'one',
      'old',
    ]);
  });

  it('are taken back, and what stood there is kept', async () => {
    const { path, day } = await savedBook();
    expect((await takeEarlier(nodeFileSteps, path, 3, day + 1000)).ok).toBe(true);
    expect(firstOf(path)).toBe('old');
    expect(await valuesOf(path)).toEqual(['three', 'two', 'one', 'old']);
  });

  it('are taken back where the file is gone or damaged', async () => {
    const { path, day } = await savedBook();
    rmSync(path);
    expect((await takeEarlier(nodeFileSteps, path, 1, day)).ok).toBe(true);
    expect(firstOf(path)).toBe('two');
    writeFileSync(path, 'damaged');
    expect((await takeEarlier(nodeFileSteps, path, 1, day + 1000)).ok).toBe(true);
    expect(firstOf(path)).toBe('two');
    const [damaged] = await backupsOf(nodeFileSteps, path);
    expect(readFileSync(damaged?.path ?? '', 'utf8')).toBe('damaged');
  });

  it('are not taken by a number that none has', async () => {
    const { path, day } = await savedBook();
    const told = await takeEarlier(nodeFileSteps, path, 4, day);
    expect([told.ok, firstOf(path)]).toEqual([false, 'three']);
    expect(told.sentence).toMatch(/no number 4 among the 3/);
  });

  it('hold what a killed save left, from the next start on', async () => {
    const { folder, path } = bookFile();
    // No process has this number: it is above what systems give out.
    writeFileSync(`${folder}/.book.xlsx.saving-999999999-00ff`, bookBytes('lost'));
    const started = await startWorkbench(path, testFolder(), testFolder(), 0);
    if (!('kind' in started)) await started.close();
    expect(await valuesOf(path)).toEqual(['lost']);
    expect(statSync(`${folder}/book.backups`).mode & 0o777).toBe(0o700);
  });
});

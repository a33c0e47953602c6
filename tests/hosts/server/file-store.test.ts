import { readdirSync, rmSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { backupFolder, backupsOf } from '../../../src/hosts/workbench/server/backups.ts';
import { fileStore } from '../../../src/hosts/workbench/server/file-store.ts';
import { nodeFileSteps, type FileSteps } from '../../../src/hosts/workbench/server/file-steps.ts';
import { savesMade } from '../../../src/hosts/workbench/server/saves-made.ts';
import { versionOf } from '../../../src/xlsx/version.ts';
import { bookBytes, bookFile, bytesAt, edit, firstOf, saveRequest } from './support.ts';

describe('saving', () => {
  it('writes the edit, names the new version and keeps the old one under its date', async () => {
    const { folder, path } = bookFile();
    const before = bytesAt(path);
    const now = Date.UTC(2026, 10, 28, 3, 25, 41, 123);
    const saved = await fileStore(path, nodeFileSteps, () => now).save(
      saveRequest(versionOf(before), 'new'),
    );
    expect(saved).toEqual({ kind: 'saved', version: versionOf(bytesAt(path)) });
    expect(firstOf(path)).toBe('new');
    expect(readdirSync(folder).sort()).toEqual(['book.backups', 'book.xlsx']);
    expect(readdirSync(backupFolder(path))).toEqual(['2026-11-28T03.25.41Z.xlsx']);
    const [backup] = await backupsOf(nodeFileSteps, path);
    expect(Buffer.compare(bytesAt(backup?.path ?? ''), before)).toBe(0);
  });

  it('goes on from its own version', async () => {
    const { path } = bookFile();
    const store = fileStore(path);
    let version = versionOf(bytesAt(path));
    for (const value of ['one', 'two', 'three']) {
      const saved = await store.save(saveRequest(version, value));
      version = saved.kind === 'saved' ? saved.version : '';
    }
    expect(firstOf(path)).toBe('three');
    const backups = await backupsOf(nodeFileSteps, path);
    expect(backups.map((backup) => firstOf(backup.path))).toEqual(['two', 'one', 'old']);
  });

  it('takes saves in turn: of two from one version the second is told', async () => {
    const { path } = bookFile();
    const store = fileStore(path);
    const version = versionOf(bytesAt(path));
    const [first, second] = await Promise.all([
      store.save(saveRequest(version, 'first')),
      store.save(saveRequest(version, 'second')),
    ]);
    expect([first.kind, second.kind]).toEqual(['saved', 'changed outside']);
    expect(firstOf(path)).toBe('first');
  });

  it('never writes over a file changed outside', async () => {
    const { path } = bookFile();
    const store = fileStore(path);
    const version = versionOf(bytesAt(path));
    writeFileSync(path, bookBytes('theirs'));
    expect(await store.save(saveRequest(version, 'ours'))).toEqual({
      kind: 'changed outside',
      version: versionOf(bookBytes('theirs')),
    });
    expect(firstOf(path)).toBe('theirs');
  });

  it('notices a change made at the last moment', async () => {
    const { path } = bookFile();
    const late: FileSteps = {
      ...nodeFileSteps,
      async read(asked) {
        const bytes = await nodeFileSteps.read(asked);
        // Once the new file has been written and read back, the other program saves.
        if (asked.includes('.saving-')) writeFileSync(path, bookBytes('theirs'));
        return bytes;
      },
    };
    const answer = await fileStore(path, late).save(saveRequest(versionOf(bytesAt(path)), 'ours'));
    expect(answer.kind).toBe('changed outside');
    expect(firstOf(path)).toBe('theirs');
  });

  it.each([
    ['an unknown sheet', [{ sheet: 'No', cells: [], tables: [] }], /no sheet "No"/],
    ['a full cell', edit('x'.repeat(40_000)), /32767/],
  ])('refuses %s and leaves the file alone', async (_what, edits, sentence) => {
    const { path } = bookFile();
    const before = bytesAt(path);
    const answer = await fileStore(path).save({ id: 'one', baseVersion: versionOf(before), edits });
    expect(answer.kind === 'refused' && answer.sentence).toMatch(sentence);
    expect(Buffer.compare(bytesAt(path), before)).toBe(0);
  });

  it('says when the file is gone', async () => {
    const answer = await fileStore('/nowhere/book.xlsx').save(saveRequest('v', 1));
    expect(answer).toEqual({
      kind: 'refused',
      sentence: 'The file "book.xlsx" is not there. Was it moved or renamed?',
    });
  });
});

describe('a save asked for again', () => {
  it('is done once and answered alike, as long as its version stands', async () => {
    const { path } = bookFile();
    const store = fileStore(path);
    const asked = saveRequest(versionOf(bytesAt(path)), 'new');
    const first = await store.save(asked);
    expect(first.kind).toBe('saved');
    const bytes = bytesAt(path);
    expect(await store.save(asked)).toEqual(first);
    expect(Buffer.compare(bytesAt(path), bytes)).toBe(0);
  });

  it('is known to the next server', async () => {
    const { folder, path } = bookFile();
    const asked = saveRequest(versionOf(bytesAt(path)), 'new');
    const store = async () => fileStore(path, nodeFileSteps, Date.now, await savesMade(folder));
    const first = await (await store()).save(asked);
    expect(await (await store()).save(asked)).toEqual(first);
  });

  it('is done where the first asking did nothing', async () => {
    const { folder, path } = bookFile();
    const asked = saveRequest(versionOf(bytesAt(path)), 'new');
    const broken: FileSteps = {
      ...nodeFileSteps,
      create: () => Promise.reject(new Error('killed')),
    };
    const store = async (steps: FileSteps) =>
      fileStore(path, steps, Date.now, await savesMade(folder));
    expect((await (await store(broken)).save(asked)).kind).toBe('refused');
    expect((await (await store(nodeFileSteps)).save(asked)).kind).toBe('saved');
    expect(firstOf(path)).toBe('new');
  });

  it('is told of a change that came after it', async () => {
    const { path } = bookFile();
    const store = fileStore(path);
    const asked = saveRequest(versionOf(bytesAt(path)), 'new');
    await store.save(asked);
    writeFileSync(path, bookBytes('theirs'));
    expect((await store.save(asked)).kind).toBe('changed outside');
    expect(firstOf(path)).toBe('theirs');
  });

  it.each([
    ['was made', true],
    ['was not', false],
  ])('may be gone over by the page’s last words, whether it %s', async (_what, isMade) => {
    const { path } = bookFile();
    const store = fileStore(path);
    const first = saveRequest(versionOf(bytesAt(path)), 'first');
    if (isMade) await store.save(first);
    const last = saveRequest(first.baseVersion, 'last', { after: first.id });
    expect((await store.save(last)).kind).toBe('saved');
    expect(firstOf(path)).toBe('last');
  });

  it('lets nobody else go over it', async () => {
    const { path } = bookFile();
    const store = fileStore(path);
    const first = saveRequest(versionOf(bytesAt(path)), 'first');
    await store.save(first);
    for (const more of [{}, { after: 'another' }]) {
      const other = saveRequest(first.baseVersion, 'other', more);
      expect((await store.save(other)).kind).toBe('changed outside');
    }
    expect(firstOf(path)).toBe('first');
  });
});

describe('a look at the file', () => {
  it('tells its version, whoever wrote it', async () => {
    const { path } = bookFile();
    const store = fileStore(path);
    const stands = () => ({ kind: 'stands', version: versionOf(bytesAt(path)) });
    expect(await store.look()).toEqual(stands());
    await store.save(saveRequest(versionOf(bytesAt(path)), 'ours'));
    expect(await store.look()).toEqual(stands());
    writeFileSync(path, bookBytes('theirs'));
    expect(await store.look()).toEqual(stands());
  });

  it('tells that it is gone, cut short or no workbook, and until when the backup was it', async () => {
    const { path } = bookFile();
    const time = Date.UTC(2026, 10, 28, 9, 30);
    const store = fileStore(path, nodeFileSteps, () => time);
    await store.save(saveRequest(versionOf(bytesAt(path)), 'ours'));
    const whole = bytesAt(path);
    for (const bytes of [whole.subarray(0, 100), whole.subarray(0, 0), Buffer.from('hello')]) {
      writeFileSync(path, bytes);
      expect(await store.look()).toMatchObject({ kind: 'lost', backup: time });
      // A page that saves now is told so, and not that another workbook stands there.
      const answer = await store.save(saveRequest(versionOf(whole), 'more'));
      expect(answer.kind).toBe('refused');
    }
    rmSync(path);
    expect(await store.look()).toMatchObject({
      kind: 'lost',
      sentence: 'The file "book.xlsx" is not there. Was it moved or renamed?',
      backup: time,
    });
    expect((await store.takeBackup()).ok).toBe(true);
    expect(firstOf(path)).toBe('old');
  });

  it('offers no backup where there is none', async () => {
    const { path } = bookFile();
    writeFileSync(path, 'hello');
    expect(await fileStore(path).look()).toEqual({
      kind: 'lost',
      sentence: expect.stringMatching(/not an \.xlsx/) as string,
    });
  });
});

import { readdirSync, rmSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { backupFolder, backupsOf } from '../../../src/hosts/workbench/server/backups.ts';
import { fileStore } from '../../../src/hosts/workbench/server/file-store.ts';
import { nodeFileSteps, type FileSteps } from '../../../src/hosts/workbench/server/file-steps.ts';
import { versionOf } from '../../../src/hosts/xlsx/version.ts';
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
    const answer = await fileStore(path).save({ baseVersion: versionOf(before), edits });
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

describe('changes made outside', () => {
  it('are told once, and our own saves never', async () => {
    const { path } = bookFile();
    const store = fileStore(path);
    const read = await store.read();
    const version = read.kind === 'read' ? read.workbook.version : '';
    expect(await store.changedOutside()).toBeUndefined();
    await store.save(saveRequest(version, 'ours'));
    expect(await store.changedOutside()).toBeUndefined();
    writeFileSync(path, bookBytes('theirs'));
    expect(await store.changedOutside()).toBe(versionOf(bookBytes('theirs')));
    expect(await store.changedOutside()).toBeUndefined();
  });

  it('are not told while the file is half written or gone', async () => {
    const { path } = bookFile();
    const store = fileStore(path);
    await store.read();
    const theirs = bookBytes('theirs');
    writeFileSync(path, theirs.subarray(0, 100));
    expect(await store.changedOutside()).toBeUndefined();
    rmSync(path);
    expect(await store.changedOutside()).toBeUndefined();
    writeFileSync(path, theirs);
    expect(await store.changedOutside()).toBe(versionOf(theirs));
  });
});

import { execFileSync, spawnSync } from 'node:child_process';
import {
  chmodSync,
  chownSync,
  linkSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
  unlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { backupFolder } from '../../../src/hosts/workbench/server/backups.ts';
import { fileStore } from '../../../src/hosts/workbench/server/file-store.ts';
import { nodeFileSteps, type FileSteps } from '../../../src/hosts/workbench/server/file-steps.ts';
import { versionOf } from '../../../src/xlsx/version.ts';
import {
  bookFile,
  bytesAt,
  firstOf,
  save,
  saveRequest,
  sentenceOf,
  withoutExchange,
} from './support.ts';

describe.each([
  ['where names can change places', nodeFileSteps],
  ['where they cannot', withoutExchange],
])('a file that is replaced, %s,', (_where, system) => {
  it('keeps its permissions, whatever the system takes away from new files', async () => {
    const { path } = bookFile();
    chmodSync(path, 0o666);
    const mask = process.umask(0o077);
    try {
      expect((await save(path, system)).kind).toBe('saved');
    } finally {
      process.umask(mask);
    }
    expect(statSync(path).mode & 0o777).toBe(0o666);
  });

  it.runIf(process.getuid?.() === 0)('keeps its owner and group', async () => {
    const { path } = bookFile();
    chownSync(path, 1234, 2345);
    expect((await save(path, system)).kind).toBe('saved');
    const { uid, gid } = statSync(path);
    expect([uid, gid]).toEqual([1234, 2345]);
  });

  it.runIf(hasAttributes())('keeps its extended attributes', async () => {
    const { path } = bookFile();
    setAttribute(path);
    expect((await save(path, system)).kind).toBe('saved');
    expect(firstOf(path)).toBe('ours');
    expect(attributesOf(path)).toContain('user.tag');
  });
});

describe('a file is left alone, with a sentence,', () => {
  it('when it is read-only', async () => {
    const { path } = bookFile();
    chmodSync(path, 0o444);
    expect(sentenceOf(await save(path))).toMatch(/^"book.xlsx" is read-only, so nothing was saved/);
    expect(firstOf(path)).toBe('old');
  });

  it('when it has a second name', async () => {
    const { folder, path } = bookFile();
    linkSync(path, join(folder, 'other.xlsx'));
    expect(sentenceOf(await save(path))).toMatch(/second name too \(a hard link\)/);
    expect(statSync(path).ino).toBe(statSync(join(folder, 'other.xlsx')).ino);
  });

  it('when it has become a link', async () => {
    const { folder, path } = bookFile();
    renameSync(path, join(folder, 'real.xlsx'));
    symlinkSync(join(folder, 'real.xlsx'), path);
    expect(sentenceOf(await save(path))).toMatch(/is now a link to another file/);
    expect(firstOf(join(folder, 'real.xlsx'))).toBe('old');
  });

  it.runIf(process.platform === 'linux')('when it is a pipe, without waiting on it', async () => {
    const { path } = bookFile();
    const version = versionOf(bytesAt(path));
    unlinkSync(path);
    execFileSync('mkfifo', [path]);
    const store = fileStore(path);
    expect(sentenceOf(await store.save(saveRequest(version, 'ours')))).toMatch(/no plain file/);
    expect((await store.read()).kind).toBe('refused');
  });

  it('when it would become another’s', async () => {
    const { path } = bookFile();
    const others: FileSteps = {
      ...nodeFileSteps,
      async look(asked) {
        const facts = await nodeFileSteps.look(asked);
        return asked === path ? { ...facts, group: facts.group + 1 } : facts;
      },
    };
    expect(sentenceOf(await save(path, others))).toMatch(/belongs to another user or group/);
    expect(firstOf(path)).toBe('old');
  });

  it.each([
    [
      '.~lock.book.xlsx#',
      'Ann Example,ann,desk,28.11.2026 03:25,file:///home;',
      '(Ann Example on desk, since 28.11.2026 03:25)',
    ],
    ['~$book.xlsx', `${String.fromCharCode(11)}Ann Example${' '.repeat(100)}`, '(Ann Example)'],
    ['~$book.xlsx', '', 'in another program, so'],
  ])('while it is open elsewhere: %s', async (lock, content, who) => {
    const { folder, path } = bookFile();
    writeFileSync(join(folder, lock), content);
    const sentence = sentenceOf(await save(path));
    expect(sentence).toContain(who);
    expect(sentence).toContain(`delete the file "${lock}"`);
    expect(firstOf(path)).toBe('old');
    rmSync(join(folder, lock));
    expect((await save(path)).kind).toBe('saved');
  });

  it('when there is no room for its backups', async () => {
    const { path } = bookFile();
    writeFileSync(backupFolder(path), 'the maker’s own');
    expect(sentenceOf(await save(path))).toMatch(/"book.backups", and a file of that name/);
    expect(firstOf(path)).toBe('old');
  });
});

function hasAttributes(): boolean {
  return spawnSync('python3', ['-c', 'import os; os.listxattr("/tmp")']).status === 0;
}

function setAttribute(path: string): void {
  execFileSync('python3', ['-c', 'import os,sys; os.setxattr(sys.argv[1],"user.tag",b"x")', path]);
}

function attributesOf(path: string): string {
  return execFileSync('python3', ['-c', 'import os,sys; print(os.listxattr(sys.argv[1]))', path], {
    encoding: 'utf8',
  });
}

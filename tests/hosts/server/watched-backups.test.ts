import { closeSync, ftruncateSync, openSync, rmSync, writeSync } from 'node:fs';
import { describe, expect, it, onTestFinished } from 'vitest';
import { backupsOf } from '../../../src/hosts/workbench/server/backups.ts';
import { fileStore } from '../../../src/hosts/workbench/server/file-store.ts';
import { type FileSteps, nodeFileSteps } from '../../../src/hosts/workbench/server/file-steps.ts';
import { versionOf } from '../../../src/xlsx/version.ts';
import { bookBytes, bookFile, bytesAt, firstOf, saveRequest } from './support.ts';

/** A program that opened the file and keeps it open: what it writes goes where the file went. */
function openElsewhere(path: string): (bytes: Uint8Array) => void {
  const handle = openSync(path, 'r+');
  onTestFinished(() => {
    closeSync(handle);
  });
  return (bytes) => {
    ftruncateSync(handle);
    writeSync(handle, bytes, 0, bytes.length, 0);
  };
}

const NOON = Date.UTC(2026, 10, 28, 12);

/** A store whose clock is a minute further on with each save. */
function served(steps: FileSteps = nodeFileSteps) {
  const { path } = bookFile();
  const theyWrite = openElsewhere(path);
  let minute = 0;
  const store = fileStore(path, steps, () => NOON + (minute += 1) * 60_000);
  const save = async (value: string) => {
    const { kind } = await store.save(saveRequest(versionOf(bytesAt(path)), value));
    expect(kind).toBe('saved');
  };
  const told = async () => (await store.lookAtBackups()).writtenInto;
  return { path, store, theyWrite, save, told };
}

describe('a state that another program writes into after it was replaced', () => {
  it('is told of with its time and place, and not before', async () => {
    const { path, theyWrite, save, told } = served();
    expect(await told()).toBeUndefined();
    await save('ours');
    expect(await told()).toBeUndefined();
    theyWrite(bookBytes('theirs'));
    const [backup] = await backupsOf(nodeFileSteps, path);
    expect(await told()).toEqual({ until: NOON + 60_000, path: backup?.path });
    expect([firstOf(path), firstOf(backup?.path ?? '')]).toEqual(['ours', 'theirs']);
  });

  it('is told of though it was written into while it was being put away', async () => {
    let write: () => void = () => undefined;
    const { theyWrite, save, told } = served({
      ...nodeFileSteps,
      moveNew(from, to) {
        write();
        return nodeFileSteps.moveNew(from, to);
      },
    });
    write = () => {
      theyWrite(bookBytes('theirs'));
    };
    await save('ours');
    expect(await told()).toMatchObject({ until: NOON + 60_000 });
  });

  it('is told of after more saves too', async () => {
    const { theyWrite, save, told } = served();
    for (const value of ['one', 'two', 'three']) await save(value);
    theyWrite(bookBytes('theirs'));
    expect(await told()).toMatchObject({ until: NOON + 60_000 });
  });

  it('can be taken, and what stood there is kept and watched', async () => {
    const { path, store, theyWrite, save, told } = served();
    await save('ours');
    const weWrite = openElsewhere(path);
    theyWrite(bookBytes('theirs'));
    const { until } = (await told()) ?? {};
    expect((await store.takeBackup(until)).ok).toBe(true);
    expect(firstOf(path)).toBe('theirs');
    expect(await told()).toBeUndefined();
    const kept = (await backupsOf(nodeFileSteps, path)).map((one) => firstOf(one.path));
    expect(kept).toEqual(['ours', 'theirs']);
    weWrite(bookBytes('late'));
    expect(await told()).toMatchObject({ until: expect.any(Number) as number });
  });

  it('can be left, and is told of again when it is written into again', async () => {
    const { store, theyWrite, save, told } = served();
    await save('ours');
    theyWrite(bookBytes('theirs'));
    const { until = 0 } = (await told()) ?? {};
    await store.leaveBackup(until);
    expect(await told()).toBeUndefined();
    theyWrite(bookBytes('theirs again'));
    expect(await told()).toMatchObject({ until });
  });

  it('is not told of while it is half written, but where it stays so', async () => {
    const { theyWrite, save, told } = served();
    await save('ours');
    const whole = bookBytes('theirs');
    theyWrite(whole.subarray(0, 100));
    expect(await told()).toBeUndefined();
    theyWrite(whole.subarray(0, 200));
    expect(await told()).toBeUndefined();
    expect(await told()).toBeDefined();
  });

  it('is no news once it is gone or as it was', async () => {
    const { path, theyWrite, save, told } = served();
    const old = bytesAt(path);
    await save('ours');
    theyWrite(bookBytes('theirs'));
    const { path: at = '' } = (await told()) ?? {};
    theyWrite(old);
    expect(await told()).toBeUndefined();
    theyWrite(bookBytes('theirs'));
    expect(await told()).toBeDefined();
    rmSync(at);
    expect(await told()).toBeUndefined();
  });

  it('is taken by its own time alone', async () => {
    const { path, store, save } = served();
    await save('ours');
    expect(await store.takeBackup(NOON)).toEqual({
      ok: false,
      sentence: 'That earlier state is not there any more.',
    });
    expect(firstOf(path)).toBe('ours');
  });
});

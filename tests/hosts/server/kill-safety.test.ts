import { describe, expect, it } from 'vitest';
import { fileStore } from '../../../src/hosts/workbench/server/file-store.ts';
import { nodeFileSteps, type FileSteps } from '../../../src/hosts/workbench/server/file-steps.ts';
import { backupPath } from '../../../src/hosts/workbench/server/replace-file.ts';
import { versionOf } from '../../../src/hosts/xlsx/version.ts';
import { cellAt, imageOf } from '../xlsx/support.ts';
import { bookFile, bytesAt, saveRequest } from './support.ts';

interface Watched {
  readonly steps: FileSteps;
  readonly names: readonly string[];
}

/**
 * File steps that stop at step number `at`: by an error of that step alone, or as if the process
 * were killed there, so that nothing after it happens. A write that stops has written one half.
 */
function stopping(at: number, how: 'error' | 'kill'): Watched {
  const names: string[] = [];
  const step = async <T>(name: string, work: () => Promise<T>, half?: () => Promise<void>) => {
    names.push(name);
    const number = names.length - 1;
    if (number === at || (how === 'kill' && number > at)) {
      if (number === at) await half?.();
      throw Object.assign(new Error(`stopped at ${name}`), { code: 'EIO' });
    }
    return work();
  };
  const steps: FileSteps = {
    read: (path) => step('read', () => nodeFileSteps.read(path)),
    mode: (path) => step('mode', () => nodeFileSteps.mode(path)),
    rename: (from, to) => step('rename', () => nodeFileSteps.rename(from, to)),
    remove: (path) => step('remove', () => nodeFileSteps.remove(path)),
    syncFolder: (folder) => step('syncFolder', () => nodeFileSteps.syncFolder(folder)),
    create: (path, mode) =>
      step('create', async () => {
        const file = await nodeFileSteps.create(path, mode);
        return {
          write: (bytes) =>
            step(
              'write',
              () => file.write(bytes),
              () => file.write(bytes.subarray(0, bytes.length / 2)),
            ),
          sync: () => step('sync', () => file.sync()),
          close: async () => {
            await file.close();
            await step('close', () => Promise.resolve());
          },
        };
      }),
  };
  return { steps, names };
}

/** The steps of a save that nothing stops. */
async function stepsOfASave(): Promise<readonly string[]> {
  const { path } = bookFile();
  const { steps, names } = stopping(Number.POSITIVE_INFINITY, 'error');
  await fileStore(path, steps).save(saveRequest(versionOf(bytesAt(path)), 'new'));
  return names;
}

describe('a save that is stopped', () => {
  it('takes the steps it should', async () => {
    const whole = ['create', 'write', 'sync', 'close', 'read'];
    expect(await stepsOfASave()).toEqual([
      'read',
      'mode',
      ...whole,
      'rename',
      ...whole,
      'read',
      'rename',
      'syncFolder',
    ]);
  });

  it.each(['error', 'kill'] as const)(
    'by %s at any step leaves a whole file, old or new',
    async (how) => {
      const names = await stepsOfASave();
      for (const [at, name] of names.entries()) {
        const { path } = bookFile();
        const before = bytesAt(path);
        const answer = await fileStore(path, stopping(at, how).steps).save(
          saveRequest(versionOf(before), 'new'),
        );
        const held = cellAt(imageOf(bytesAt(path)), 'Notes', 'A1')?.value;
        const renamed = at > names.lastIndexOf('rename');
        expect([at, name, held]).toEqual([at, name, renamed ? 'new' : 'old']);
        // A save that is told as done is done; one told as refused has changed nothing.
        expect([at, name, answer.kind]).toEqual([at, name, renamed ? 'saved' : 'refused']);
        // The backup, where there is one already, is whole too.
        if (at > names.indexOf('rename')) {
          expect(Buffer.compare(bytesAt(backupPath(path)), before)).toBe(0);
        }
        const again = await fileStore(path).save(saveRequest(versionOf(bytesAt(path)), 'newer'));
        expect(again.kind).toBe('saved');
      }
    },
  );

  it('refuses bytes that the disk gave back wrong', async () => {
    const { path } = bookFile();
    const before = bytesAt(path);
    const wrong: FileSteps = {
      ...nodeFileSteps,
      async read(asked) {
        const bytes = await nodeFileSteps.read(asked);
        return asked.includes('.saving-') ? bytes.slice(1) : bytes;
      },
    };
    const answer = await fileStore(path, wrong).save(saveRequest(versionOf(before), 'new'));
    expect(answer.kind).toBe('refused');
    expect(Buffer.compare(bytesAt(path), before)).toBe(0);
  });
});

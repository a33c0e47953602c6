import { describe, expect, it } from 'vitest';
import { backupsOf } from '../../../src/hosts/workbench/server/backups.ts';
import { fileStore } from '../../../src/hosts/workbench/server/file-store.ts';
import { nodeFileSteps, type FileSteps } from '../../../src/hosts/workbench/server/file-steps.ts';
import { versionOf } from '../../../src/xlsx/version.ts';
import { cellAt, imageOf } from '../../xlsx/support.ts';
import { bookFile, bytesAt, saveRequest, withoutExchange } from './support.ts';

interface Watched {
  readonly steps: FileSteps;
  readonly names: readonly string[];
}

/**
 * File steps that stop at step number `at`: by an error of that step alone, or as if the process
 * were killed there, so that nothing after it happens. A write that stops has written one half.
 */
function stopping(system: FileSteps, at: number, how: 'error' | 'kill'): Watched {
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
    read: (path) => step('read', () => system.read(path)),
    look: (path) => step('look', () => system.look(path)),
    exchange: (one, other) => step('exchange', () => system.exchange(one, other)),
    renameOver: (from, to, mark) => step('renameOver', () => system.renameOver(from, to, mark)),
    moveNew: (from, to) => step('moveNew', () => system.moveNew(from, to)),
    remove: (path) => step('remove', () => system.remove(path)),
    makeFolder: (path) => step('makeFolder', () => system.makeFolder(path)),
    list: (folder) => step('list', () => system.list(folder)),
    syncFolder: (folder) => step('syncFolder', () => system.syncFolder(folder)),
    create: (path, like) =>
      step('create', async () => {
        const file = await system.create(path, like);
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
async function stepsOfASave(system: FileSteps): Promise<readonly string[]> {
  const { path } = bookFile();
  const { steps, names } = stopping(system, Number.POSITIVE_INFINITY, 'error');
  await fileStore(path, steps).save(saveRequest(versionOf(bytesAt(path)), 'new'));
  return names;
}

const locks = ['read', 'read'];
const whole = ['create', 'write', 'sync', 'close', 'read'];
const backup = ['moveNew', 'list'];

describe.each([
  ['where names can change places', nodeFileSteps, ['exchange', 'read', 'syncFolder', ...backup]],
  [
    'where they cannot',
    withoutExchange,
    ['exchange', ...whole, 'look', 'read', 'renameOver', 'syncFolder', ...backup],
  ],
])('a save that is stopped, %s,', (_where, system, last) => {
  it('takes the steps it should', async () => {
    expect(await stepsOfASave(system)).toEqual([
      'read',
      'look',
      ...locks,
      'makeFolder',
      ...whole,
      'look',
      ...last,
    ]);
  });

  it.each(['error', 'kill'] as const)(
    'by %s at any step leaves a whole file, old or new, and no other lost',
    async (how) => {
      const names = await stepsOfASave(system);
      for (const [at, name] of names.entries()) {
        const { path } = bookFile();
        const before = bytesAt(path);
        const answer = await fileStore(path, stopping(system, at, how).steps).save(
          saveRequest(versionOf(before), 'new'),
        );
        const held = cellAt(imageOf(bytesAt(path)), 'Notes', 'A1')?.value;
        expect(['old', 'new']).toContain(held);
        // A save that is told as done is done; one told as refused has changed nothing.
        if (how === 'error') {
          expect([at, name, answer.kind]).toEqual([at, name, held === 'new' ? 'saved' : 'refused']);
        }
        const again = await fileStore(path).save(saveRequest(versionOf(bytesAt(path)), 'newer'));
        expect(again.kind).toBe('saved');
        // What was replaced last is whole among the backups.
        const [newest] = await backupsOf(nodeFileSteps, path);
        expect(cellAt(imageOf(bytesAt(newest?.path ?? '')), 'Notes', 'A1')?.value).toBe(held);
      }
    },
  );

  it('refuses bytes that the disk gave back wrong', async () => {
    const { path } = bookFile();
    const before = bytesAt(path);
    const wrong: FileSteps = {
      ...system,
      async read(asked) {
        const bytes = await system.read(asked);
        return asked.includes('.saving-') ? bytes.slice(1) : bytes;
      },
    };
    const answer = await fileStore(path, wrong).save(saveRequest(versionOf(before), 'new'));
    expect(answer.kind).toBe('refused');
    expect(Buffer.compare(bytesAt(path), before)).toBe(0);
  });
});

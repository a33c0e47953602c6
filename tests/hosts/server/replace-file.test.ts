import {
  existsSync,
  readdirSync,
  renameSync,
  rmSync,
  symlinkSync,
  unlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { backupsOf } from '../../../src/hosts/workbench/server/backups.ts';
import { nodeFileSteps, type FileSteps } from '../../../src/hosts/workbench/server/file-steps.ts';
import {
  bookBytes,
  bookFile,
  bytesAt,
  firstOf,
  save,
  sentenceOf,
  testFolder,
  withoutExchange,
} from './support.ts';

/** Another program’s save: a new file in the old one's place. */
function theySave(path: string, value: string): void {
  writeFileSync(`${path}.theirs`, bookBytes(value));
  renameSync(`${path}.theirs`, path);
}

/** Steps that let someone else act just before each step; `act` gets the step's number and name. */
function between(system: FileSteps, act: (at: number, name: string) => void): FileSteps {
  let at = -1;
  const before = (name: string) => {
    at += 1;
    act(at, name);
  };
  return Object.fromEntries(
    Object.entries(system).map(([name, step]) => [
      name,
      (...given: unknown[]) => {
        before(name);
        return (step as (...all: unknown[]) => unknown)(...given);
      },
    ]),
  ) as unknown as FileSteps;
}

async function countSteps(system: FileSteps): Promise<number> {
  let steps = 0;
  const { path } = bookFile();
  await save(
    path,
    between(system, () => (steps += 1)),
  );
  return steps;
}

describe.each([
  ['where names can change places', nodeFileSteps],
  ['where they cannot', withoutExchange],
])('another program’s save, %s,', (_where, system) => {
  it('stands, at whatever step of ours it comes', async () => {
    const steps = await countSteps(system);
    for (let when = 0; when < steps; when += 1) {
      const { path } = bookFile();
      const answer = await save(
        path,
        between(system, (at) => {
          if (at === when) theySave(path, 'theirs');
        }),
      );
      expect([when, firstOf(path)]).toEqual([when, 'theirs']);
      expect([when, answer.kind]).not.toEqual([when, 'refused']);
    }
  });

  it('stands when two come, at whatever steps, and a whole file is always there', async () => {
    const steps = await countSteps(system);
    for (let first = 0; first < steps; first += 1) {
      // Putting back takes steps of its own.
      for (let second = first; second < steps + 3; second += 1) {
        const { path } = bookFile();
        let newest = 'ours';
        await save(
          path,
          between(system, (at) => {
            expect(existsSync(path)).toBe(true);
            if (at === first) theySave(path, (newest = 'theirs'));
            if (at === second) theySave(path, (newest = 'their newest'));
          }),
        );
        expect([first, second, firstOf(path)]).toEqual([first, second, newest]);
      }
    }
  });

  it('is no backup of ours, and leaves nothing behind', async () => {
    const { folder, path } = bookFile();
    await save(
      path,
      between(system, (_at, name) => {
        if (name === 'exchange') theySave(path, 'theirs');
      }),
    );
    expect(readdirSync(folder).sort()).toEqual(['book.backups', 'book.xlsx']);
    expect(await backupsOf(nodeFileSteps, path)).toEqual([]);
  });

  it('written into the old file is seen', async () => {
    const { path } = bookFile();
    const answer = await save(
      path,
      between(system, (_at, name) => {
        if (name === 'exchange') writeFileSync(path, bookBytes('theirs, in place'));
      }),
    );
    expect([answer.kind, firstOf(path)]).toEqual(['changed outside', 'theirs, in place']);
  });

  it('a file taken away meanwhile is not put there again', async () => {
    const { path } = bookFile();
    const answer = await save(
      path,
      between(system, (_at, name) => {
        if (name === 'exchange') rmSync(path);
      }),
    );
    expect(sentenceOf(answer)).toMatch(/is not there/);
    expect(existsSync(path)).toBe(false);
  });
});

it('what they had saved goes back when somebody takes our file away in that moment', async () => {
  const { path } = bookFile();
  let exchanges = 0;
  const answer = await save(
    path,
    between(nodeFileSteps, (_at, name) => {
      if (name !== 'exchange') return;
      exchanges += 1;
      if (exchanges === 1) theySave(path, 'theirs');
      else rmSync(path);
    }),
  );
  expect([answer.kind, firstOf(path)]).toEqual(['changed outside', 'theirs']);
});

it('nothing of the maker’s own is written over, nor anything through a planted link', async () => {
  const { folder, path } = bookFile();
  const own = join(folder, 'book.backup.xlsx');
  writeFileSync(own, 'the maker’s own');
  const victim = join(testFolder(), 'victim');
  writeFileSync(victim, 'victim');
  const planted: FileSteps = {
    ...nodeFileSteps,
    create(fresh, like) {
      // As if the name had been guessed.
      symlinkSync(victim, fresh);
      return nodeFileSteps.create(fresh, like);
    },
  };
  expect(sentenceOf(await save(path, planted))).toMatch(/EEXIST/);
  for (const name of readdirSync(folder)) {
    if (name.includes('.saving-')) unlinkSync(join(folder, name));
  }
  expect((await save(path)).kind).toBe('saved');
  expect(bytesAt(own)).toEqual(new Uint8Array(Buffer.from('the maker’s own')));
  expect(bytesAt(victim)).toEqual(new Uint8Array(Buffer.from('victim')));
});

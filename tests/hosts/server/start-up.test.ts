import { mkdirSync, readFileSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { parseArguments } from '../../../src/hosts/workbench/server/arguments.ts';
import { ledgerPlace } from '../../../src/hosts/workbench/server/ledger-place.ts';
import { listen } from '../../../src/hosts/workbench/server/listen.ts';
import { workingCopy, workingFolder } from '../../../src/hosts/workbench/server/working-copy.ts';
import { testFolder } from './support.ts';

describe('the command line', () => {
  const serve = { kind: 'serve', file: undefined, port: undefined, fresh: false };
  it.each([
    [[], serve],
    [['book.xlsx'], { ...serve, file: 'book.xlsx' }],
    [['book.xlsx', '--port', '8080'], { ...serve, file: 'book.xlsx', port: 8080 }],
    [['--port=0'], { ...serve, port: 0 }],
    [['--fresh'], { ...serve, fresh: true }],
    [['--backups'], { kind: 'backups', file: undefined, take: undefined }],
    [['--take', '3', 'book.xlsx'], { kind: 'backups', file: 'book.xlsx', take: 3 }],
  ])('%j', (given, asked) => {
    expect(parseArguments(given)).toEqual(asked);
  });

  it.each([
    [['--port'], /"" is no port/],
    [['--port', '70000'], /no port/],
    [['--port', '8e3'], /no port/],
    [['--colour'], /not known/],
    [['--take', 'book.xlsx'], /"book.xlsx" is no number of a backup/],
    [['--backups', '--fresh'], /neither --fresh nor --port/],
    [['a.xlsx', 'b.xlsx'], /Only one workbook/],
    [['a.xlsx', '--fresh'], /demo copy/],
  ])('%j is refused', (given, sentence) => {
    const asked = parseArguments(given);
    expect(asked.kind === 'refused' && asked.sentence).toMatch(sentence);
  });
});

describe('the working copy', () => {
  const setUp = () => {
    const starter = () => new TextEncoder().encode('starter');
    return { starter, home: join(testFolder(), 'data', 'pour-ledger') };
  };

  it('is made once and then kept', async () => {
    const { starter, home } = setUp();
    const copy = await workingCopy(starter, home, false);
    writeFileSync(copy, 'with a year of work');
    expect(await workingCopy(starter, home, false)).toBe(copy);
    expect(readFileSync(copy, 'utf8')).toBe('with a year of work');
  });

  it('takes its backups along when it is put aside', async () => {
    const { starter, home } = setUp();
    await workingCopy(starter, home, false);
    mkdirSync(join(home, 'pour-ledger.backups'));
    await workingCopy(starter, home, true);
    expect(readdirSync(home).sort()).toEqual([
      'pour-ledger.old-1.backups',
      'pour-ledger.old-1.xlsx',
      'pour-ledger.xlsx',
    ]);
  });

  it('is its maker’s alone', async () => {
    const { starter, home } = setUp();
    const copy = await workingCopy(starter, home, false);
    expect([home, copy].map((path) => statSync(path).mode & 0o777)).toEqual([0o700, 0o600]);
  });

  it('starts anew without losing the old ones', async () => {
    const { starter, home } = setUp();
    for (const content of ['first', 'second']) {
      writeFileSync(await workingCopy(starter, home, true), content);
    }
    const copy = await workingCopy(starter, home, true);
    expect(readFileSync(copy, 'utf8')).toBe('starter');
    expect(readdirSync(home).sort()).toEqual([
      'pour-ledger.old-1.xlsx',
      'pour-ledger.old-2.xlsx',
      'pour-ledger.xlsx',
    ]);
    expect(readFileSync(join(home, 'pour-ledger.old-2.xlsx'), 'utf8')).toBe('second');
  });

  it('that is put aside takes along what was begun over it', async () => {
    const { starter, home } = setUp();
    const copy = await workingCopy(starter, home, false);
    const old = await ledgerPlace(home, copy);
    await workingCopy(starter, home, true);
    const fresh = await ledgerPlace(home, copy);
    expect(fresh.host).not.toBe(old.host);
    expect(fresh.secret).not.toBe(old.secret);
    const aside = await ledgerPlace(home, join(home, 'pour-ledger.old-1.xlsx'));
    expect([aside.host, aside.secret]).toEqual([old.host, old.secret]);
  });

  it('lives in the system’s data folder where it names one', () => {
    expect(workingFolder('/data', '/home/maker')).toBe('/data/pour-ledger');
    expect(workingFolder(undefined, '/home/maker')).toBe('/home/maker/.pour-ledger');
    expect(workingFolder('', '/home/maker')).toBe('/home/maker/.pour-ledger');
  });

  it('is asked for only where one is made, and leaves the old one where it can’t be', async () => {
    const { starter, home } = setUp();
    const copy = await workingCopy(starter, home, false);
    const never = (): never => {
      throw new Error('no starter today');
    };
    expect(await workingCopy(never, home, false)).toBe(copy);
    await expect(workingCopy(never, home, true)).rejects.toThrow('no starter today');
    expect(readdirSync(home)).toEqual(['pour-ledger.xlsx']);
  });
});

describe('listening', () => {
  const server = () => {
    const made = createServer();
    onTestFinished(() => void made.close());
    return made;
  };

  it('takes the wished port or says that it is taken', async () => {
    const port = await listen(server(), 0);
    await expect(listen(server(), port)).rejects.toThrow(/is in use; choose another/);
  });

  it('takes another port when the usual one is in use', async () => {
    const first = await listen(server(), undefined);
    const second = await listen(server(), undefined);
    expect(second).not.toBe(first);
  });
});

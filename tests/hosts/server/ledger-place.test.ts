import { chmodSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ledgerPlace, moveLedgerPlace } from '../../../src/hosts/workbench/server/ledger-place.ts';
import { testFolder } from './support.ts';

const permissions = (path: string): number => statSync(path).mode & 0o777;

describe('the place of a workbook', () => {
  it('is the same each time, and another for another file', async () => {
    const data = join(testFolder(), 'data');
    const first = await ledgerPlace(data, '/a/book.xlsx');
    const again = await ledgerPlace(data, '/a/book.xlsx');
    const other = await ledgerPlace(data, '/b/book.xlsx');
    const facts = ({ folder, host, secret, port }: typeof first) => [folder, host, secret, port];
    expect(facts(again)).toEqual(facts(first));
    for (const [at, fact] of facts(other).slice(0, 3).entries()) {
      expect(fact).not.toBe(facts(first)[at]);
    }
  });

  it('keeps its port', async () => {
    const data = join(testFolder(), 'data');
    const first = await ledgerPlace(data, '/a/book.xlsx');
    expect(first.port).toBeUndefined();
    await first.keepPort(40_123);
    const again = await ledgerPlace(data, '/a/book.xlsx');
    expect([again.port, again.host]).toEqual([40_123, first.host]);
  });

  it.skipIf(process.platform === 'win32')('is for nobody else to look into', async () => {
    const data = join(testFolder(), 'data');
    mkdirSync(data);
    chmodSync(data, 0o755);
    const { folder, keepPort } = await ledgerPlace(data, '/a/book.xlsx');
    await keepPort(40_123);
    expect([data, folder, join(data, 'ledgers')].map(permissions)).toEqual([0o700, 0o700, 0o700]);
    expect(readdirSync(folder).map((name) => permissions(join(folder, name)))).toEqual([0o600]);
  });

  it.each([
    'no JSON',
    'null',
    '{}',
    '{"name":"guessed","secret":"guessed"}',
    `{"name":"${'a'.repeat(20)}","secret":"short"}`,
    `{"name":"${'a'.repeat(20)}","secret":"${'b'.repeat(32)}","port":"4180"}`,
    `{"name":"${'a'.repeat(20)}","secret":"${'b'.repeat(32)}","port":70000}`,
  ])('is made anew where what was kept is damaged: %s', async (text) => {
    const data = join(testFolder(), 'data');
    const { folder } = await ledgerPlace(data, '/a/book.xlsx');
    const [file = ''] = readdirSync(folder);
    writeFileSync(join(folder, file), text);
    const made = await ledgerPlace(data, '/a/book.xlsx');
    expect(made.host).toMatch(/^[0-9a-f]{20}\.localhost$/);
    expect(made.host).not.toBe(`${'a'.repeat(20)}.localhost`);
    expect(made.secret).toMatch(/^[\w-]{32}$/);
    expect(readFileSync(join(folder, file), 'utf8')).toContain(made.secret);
  });

  it('follows its file, and never over the place of another', async () => {
    const data = join(testFolder(), 'data');
    const [one, two] = [await ledgerPlace(data, '/one'), await ledgerPlace(data, '/two')];
    await moveLedgerPlace(data, '/one', '/two');
    expect((await ledgerPlace(data, '/two')).host).toBe(two.host);
    await moveLedgerPlace(data, '/one', '/three');
    expect((await ledgerPlace(data, '/three')).host).toBe(one.host);
  });
});

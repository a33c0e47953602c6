import { mkdirSync, renameSync, symlinkSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { connect } from 'node:net';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { createBookReader } from '../../../src/hosts/workbench/book-lines.ts';
import type { WorkbookImage } from '../../../src/hosts/xlsx/image.ts';
import { MAX_BODY_BYTES } from '../../../src/hosts/workbench/server/read-body.ts';
import { startWorkbench } from '../../../src/hosts/workbench/server/start.ts';
import { versionOf } from '../../../src/hosts/xlsx/version.ts';
import { cellAt, imageOf } from '../xlsx/support.ts';
import {
  ask,
  bookBytes,
  bookFile,
  bytesAt,
  listen,
  saveRequest,
  testFolder,
  type Answer,
} from './support.ts';

const JSON_TYPE = { 'Content-Type': 'application/json' };

async function workbench() {
  const { path, folder } = bookFile();
  const data = join(folder, 'data');
  const page = join(testFolder(), 'page');
  mkdirSync(page);
  writeFileSync(join(page, 'index.html'), '<!doctype html><title>Pour Ledger</title>');
  writeFileSync(join(page, 'start.js'), '"use strict";');
  writeFileSync(join(page, '..', 'secret.txt'), 'secret');
  symlinkSync(join(page, '..', 'secret.txt'), join(page, 'link.txt'));
  const started = await startWorkbench(path, page, data, 0);
  if ('kind' in started) throw new Error(started.sentence);
  onTestFinished(() => started.close());
  const { pathname: root, host, port } = new URL(started.address);
  const { address, close } = started;
  return { path, root, host, port: Number(port), address, pageRoot: page, data, close };
}

/** The same workbook served again, as after the server ended. */
async function again({ path, pageRoot, data }: Awaited<ReturnType<typeof workbench>>) {
  const started = await startWorkbench(path, pageRoot, data);
  if ('kind' in started) throw new Error(started.sentence);
  onTestFinished(() => started.close());
  return started;
}

const save = (
  address: string,
  root: string,
  body: string,
  headers: Record<string, string> = JSON_TYPE,
): Promise<Answer> => ask(address, `${root}api/save`, { method: 'POST', headers, body });

/** The first line that the server answers to these very bytes. */
const firstLine = (port: number, bytes: string): Promise<string> =>
  new Promise((resolve, reject) => {
    const socket = connect(port, '127.0.0.1', () => socket.write(bytes));
    socket.once('error', reject);
    socket.once('data', (text) => {
      socket.destroy();
      resolve(String(text).split('\r\n')[0] ?? '');
    });
  });

function bookIn({ body }: Answer): WorkbookImage {
  const reader = createBookReader();
  for (const line of body.trimEnd().split('\n')) reader.take(line);
  return reader.finish();
}

describe('the workbench’s server', () => {
  it('gives the page and its parts, with a strict policy on every answer', async () => {
    const { address, root } = await workbench();
    const answers = await Promise.all(
      [root, `${root}start.js`, `${root}api/book`, '/', `${root}none.js`].map((path) =>
        ask(address, path),
      ),
    );
    expect(answers.map(({ status }) => status)).toEqual([200, 200, 200, 404, 404]);
    expect(answers[0]?.body).toContain('<title>Pour Ledger</title>');
    expect(answers[1]?.headers['content-type']).toBe('text/javascript; charset=utf-8');
    for (const { headers } of answers) {
      const policy = String(headers['content-security-policy']);
      for (const rule of [
        "default-src 'none'",
        "script-src 'self'",
        "connect-src 'self'",
        "base-uri 'none'",
        "form-action 'none'",
        "frame-ancestors 'none'",
      ]) {
        expect(policy.split('; ')).toContain(rule);
      }
      expect(policy).not.toContain('unsafe-eval');
      expect(headers['x-content-type-options']).toBe('nosniff');
      expect(headers['referrer-policy']).toBe('no-referrer');
      expect(headers['access-control-allow-origin']).toBeUndefined();
    }
  });

  it('lets the browser keep the page’s files and nothing else', async () => {
    const { address, root } = await workbench();
    const kept = async (path: string) => (await ask(address, path)).headers['cache-control'];
    expect(await kept(`${root}start.js`)).toBe('no-cache');
    for (const path of [`${root}api/book`, `${root}none.js`, '/']) {
      expect(await kept(path)).toBe('no-store');
    }
  });

  it('sends a file again only when it changed', async () => {
    const { address, root, pageRoot } = await workbench();
    const get = (tag: string) =>
      ask(address, `${root}start.js`, { headers: { 'If-None-Match': tag } });
    const first = await get('"another"');
    const tag = String(first.headers['etag']);
    expect([first.status, first.body]).toEqual([200, '"use strict";']);
    const again = await get(tag);
    expect([again.status, again.body, again.headers['etag']]).toEqual([304, '', tag]);
    for (const name of ['content-security-policy', 'x-content-type-options', 'cache-control']) {
      expect(again.headers[name]).toBe(first.headers[name]);
    }
    writeFileSync(join(pageRoot, 'start.js'), '"use stricter";');
    const changed = await get(tag);
    expect([changed.status, changed.body]).toEqual([200, '"use stricter";']);
    expect(changed.headers['etag']).not.toBe(tag);
  });

  it('has a name and a token that nobody can guess, others for each workbook', async () => {
    const [one, two] = [await workbench(), await workbench()];
    expect(one.root).not.toBe(two.root);
    // 24 random bytes are 32 letters, 10 are 20 digits of sixteen.
    expect(one.root).toMatch(/^\/[\w-]{32}\/$/);
    expect(one.host).toMatch(/^[0-9a-f]{20}\.localhost:\d+$/);
    expect(one.host.split('.')[0]).not.toBe(two.host.split('.')[0]);
    expect((await ask(one.address, two.root)).status).toBe(404);
  });

  it('serves the old address again after it ended', async () => {
    const first = await workbench();
    await first.close();
    const second = await again(first);
    expect(second.address).toBe(first.address);
    expect((await ask(second.address, first.root)).status).toBe(200);
  });

  it('goes elsewhere when another program has taken its port, and stays there', async () => {
    const first = await workbench();
    await first.close();
    const squatter = createServer();
    await new Promise<void>((ready) => squatter.listen(first.port, '127.0.0.1', ready));
    const second = await again(first);
    expect(new URL(second.address).port).not.toBe(String(first.port));
    await second.close();
    await new Promise((closed) => squatter.close(closed));
    expect((await again(first)).address).toBe(second.address);
  });

  it.each([
    ['steps up', '../secret.txt'],
    ['steps up, escaped', '%2e%2e%2fsecret.txt'],
    ['a link out of the page', 'link.txt'],
    ['a folder', 'api'],
  ])('gives nothing for %s', async (_what, path) => {
    const { address, root } = await workbench();
    const { status, body } = await ask(address, root + path);
    expect([status, body]).toEqual([404, 'Nothing is here.']);
  });

  it('answers only its own host name', async () => {
    const { address, root, host } = await workbench();
    const [, port = ''] = host.split(':');
    const status = async (name: string) =>
      (await ask(address, `${root}api/book`, { headers: { Host: name } })).status;
    expect(await status(host)).toBe(200);
    expect(await status(`localhost:${port}`)).toBe(421);
    expect(await status(`127.0.0.1:${port}`)).toBe(421);
    expect(await status('attacker.example')).toBe(421);
    expect(await status(`attacker.example:${port}`)).toBe(421);
  });

  it('believes neither of two host names', async () => {
    const { root, host, port } = await workbench();
    const line = await firstLine(
      port,
      `GET ${root} HTTP/1.1\r\nHost: ${host}\r\nHost: attacker.example\r\n\r\n`,
    );
    expect(line).toMatch(/^HTTP\/1\.1 4(?:00|21) /);
  });

  it('shows the book, saves an edit, and the book then shows it', async () => {
    const { address, root, path, host } = await workbench();
    const book = bookIn(await ask(address, `${root}api/book`));
    expect(book.fileName).toBe('book.xlsx');
    const headers = { ...JSON_TYPE, Origin: `http://${host}`, 'Sec-Fetch-Site': 'same-origin' };
    const saved = await save(
      address,
      root,
      JSON.stringify(saveRequest(book.version, '=1+1')),
      headers,
    );
    expect(JSON.parse(saved.body)).toEqual({ kind: 'saved', version: versionOf(bytesAt(path)) });
    const after = bookIn(await ask(address, `${root}api/book`));
    expect(cellAt(after, 'Notes', 'A1')).toMatchObject({ value: '=1+1' });
    const late = await save(address, root, JSON.stringify(saveRequest(book.version, 'late')));
    expect(JSON.parse(late.body)).toEqual({ kind: 'changed outside', version: after.version });
    expect(cellAt(imageOf(bytesAt(path)), 'Notes', 'A1')?.value).toBe('=1+1');
  });

  it.each([
    ['a form', 'x=1', { 'Content-Type': 'application/x-www-form-urlencoded' }, 415],
    ['another origin', '{}', { ...JSON_TYPE, Origin: 'http://attacker.example' }, 403],
    ['no save request', '{}', JSON_TYPE, 400],
    ['too much', '', { ...JSON_TYPE, 'Content-Length': String(MAX_BODY_BYTES + 1) }, 413],
  ])('refuses %s', async (_what, body, headers, status) => {
    const { address, root, path } = await workbench();
    const before = bytesAt(path);
    expect((await save(address, root, body, headers)).status).toBe(status);
    expect(Buffer.compare(bytesAt(path), before)).toBe(0);
  });

  it('tells every listening page what stands in the file’s place, and each change once', async () => {
    const { address, root, path } = await workbench();
    const stands = () =>
      `data: ${JSON.stringify({ kind: 'stands', version: versionOf(bytesAt(path)) })}\n\n`;
    const pages = [await listen(address, root), await listen(address, root)];
    const heard = () => Promise.all(pages.map((page) => page.next()));
    expect(await heard()).toEqual([stands(), stands()]);
    const asked = saveRequest(versionOf(bytesAt(path)), 'mine');
    const mine = await save(address, root, JSON.stringify(asked));
    expect(JSON.parse(mine.body)).toMatchObject({ kind: 'saved' });
    expect(await heard()).toEqual([stands(), stands()]);
    writeFileSync(`${path}.theirs`, bookBytes('theirs'));
    renameSync(`${path}.theirs`, path);
    expect(await heard()).toEqual([stands(), stands()]);
    for (const page of pages) page.stop();
  });

  it('keeps the pane’s texts, for this workbook and for the next server', async () => {
    const first = await workbench();
    const { address, root } = first;
    const other = await workbench();
    const keep = async (texts: unknown) =>
      (
        await ask(address, `${root}api/texts`, {
          method: 'POST',
          headers: JSON_TYPE,
          body: JSON.stringify(texts),
        })
      ).body;
    expect(await keep({ 'pour draft': '{"a":1}', gone: 'soon', ['__proto__']: 'x' })).toBe(
      '{"kind":"kept"}',
    );
    await Promise.all([keep({ gone: null }), keep({ 'sell draft': 'b' })]);
    expect(await keep(['no', 'texts'])).toContain('"refused"');
    expect(await keep({ n: 1 })).toContain('"refused"');
    await first.close();
    const second = await again(first);
    const held = JSON.parse((await ask(second.address, `${root}api/texts`)).body) as object;
    expect(Object.entries(held)).toEqual([
      ['pour draft', '{"a":1}'],
      ['__proto__', 'x'],
      ['sell draft', 'b'],
    ]);
    expect((await ask(other.address, `${other.root}api/texts`)).body).toBe('{}');
  });

  it('says of a damaged file until when its backup was it, and takes that back', async () => {
    const { address, root, path } = await workbench();
    const before = bytesAt(path);
    await save(address, root, JSON.stringify(saveRequest(versionOf(before), 'new')));
    writeFileSync(path, bytesAt(path).subarray(0, 200));
    const book = await ask(address, `${root}api/book`);
    expect(book.status).toBe(422);
    expect(JSON.parse(book.body)).toMatchObject({ kind: 'lost', backup: expect.any(Number) });
    const post = { method: 'POST', headers: JSON_TYPE, body: '{}' };
    const taken = await ask(address, `${root}api/take-backup`, post);
    expect(JSON.parse(taken.body)).toEqual({ kind: 'taken' });
    expect(versionOf(bytesAt(path))).toBe(versionOf(before));
  });

  it('does not start on a damaged file, and says how to go back to its backup', async () => {
    const first = await workbench();
    const { address, root, path, pageRoot, data } = first;
    await save(address, root, JSON.stringify(saveRequest(versionOf(bytesAt(path)), 'new')));
    await first.close();
    writeFileSync(path, bytesAt(path).subarray(0, 200));
    const started = await startWorkbench(path, pageRoot, data);
    expect('kind' in started && started.sentence).toMatch(
      /\nIts state until .+ is kept\. To go back to it: npm start -- --take 1 ".*book\.xlsx"$/,
    );
  });

  it.each([
    ['a file that is not there', '/nowhere/book.xlsx', /is not there/],
    ['a file that is no workbook', '/etc/hostname', /not an \.xlsx/],
  ])('does not start on %s', async (_what, file, sentence) => {
    const started = await startWorkbench(file, '/nowhere', testFolder());
    expect('kind' in started && started.sentence).toMatch(sentence);
  });
});

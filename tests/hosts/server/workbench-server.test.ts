import { writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { connect } from 'node:net';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { createBookReader } from '../../../src/hosts/workbench/book-lines.ts';
import type { WorkbookImage } from '../../../src/xlsx/image.ts';
import { MAX_BODY_BYTES } from '../../../src/hosts/workbench/server/read-body.ts';
import { startWorkbench } from '../../../src/hosts/workbench/server/start.ts';
import { versionOf } from '../../../src/xlsx/version.ts';
import { cellAt, imageOf } from '../../xlsx/support.ts';
import { again, JSON_TYPE, save, workbench } from './served.ts';
import { ask, bytesAt, saveRequest, testFolder, type Answer } from './support.ts';

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
    // Whoever held the port may have heard the old name and secret from a page still open.
    expect(new URL(second.address).hostname).not.toBe(new URL(first.address).hostname);
    expect(new URL(second.address).pathname).not.toBe(first.root);
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

  it.each([
    ['a file that is not there', '/nowhere/book.xlsx', /is not there/],
    ['a file that is no workbook', '/etc/hostname', /not an \.xlsx/],
  ])('does not start on %s', async (_what, file, sentence) => {
    const started = await startWorkbench(file, '/nowhere', testFolder());
    expect('kind' in started && started.sentence).toMatch(sentence);
  });
});

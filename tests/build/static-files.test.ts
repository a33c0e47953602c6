import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, request, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { staticFiles } from '../../src/build/static-files.ts';

const top = mkdtempSync(join(tmpdir(), 'pour-ledger-static-'));
let server: Server;

beforeAll(async () => {
  mkdirSync(join(top, 'dist/icons'), { recursive: true });
  writeFileSync(join(top, 'secret.json'), '{}');
  writeFileSync(join(top, 'dist/functions.json'), '{"functions":[]}');
  writeFileSync(join(top, 'dist/icons/icon-16.png'), 'not really');
  writeFileSync(join(top, 'dist/.hidden.json'), '{}');
  writeFileSync(join(top, 'dist/notes.txt'), 'notes');
  const serve = staticFiles(join(top, 'dist'));
  server = createServer((incoming, response) => void serve(incoming, response));
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
});

afterAll(async () => {
  await new Promise((done) => server.close(done));
  rmSync(top, { recursive: true });
});

/** Asks with the path as it is; `fetch` would tidy the dots away. */
function ask(
  path: string,
  method = 'GET',
): Promise<{ status: number; type: string; body: string }> {
  const { port } = server.address() as AddressInfo;
  return new Promise((answer, failed) => {
    request({ host: '127.0.0.1', port, path, method }, (response) => {
      let body = '';
      response.on('data', (part: Buffer) => (body += part.toString()));
      response.on('end', () =>
        answer({
          status: response.statusCode ?? 0,
          type: response.headers['content-type'] ?? '',
          body,
        }),
      );
    })
      .on('error', failed)
      .end();
  });
}

describe('serving dist/ to Excel', () => {
  it('serves a file with its type', async () => {
    expect(await ask('/functions.json?v=1')).toEqual({
      status: 200,
      type: 'application/json; charset=utf-8',
      body: '{"functions":[]}',
    });
    expect(await ask('/icons/icon-16.png')).toMatchObject({ status: 200, type: 'image/png' });
    expect(await ask('/functions.json', 'HEAD')).toMatchObject({ status: 200, body: '' });
  });

  it.each([
    ['/../secret.json', 'GET'],
    ['/icons/../../secret.json', 'GET'],
    ['/%2e%2e/secret.json', 'GET'],
    ['/..%2fsecret.json', 'GET'],
    ['//etc/hosts.json', 'GET'],
    ['/.hidden.json', 'GET'],
    ['/notes.txt', 'GET'],
    ['/icons', 'GET'],
    ['/', 'GET'],
    ['/none.json', 'GET'],
    ['/functions.json', 'POST'],
    ['/functions.json', 'DELETE'],
  ])('answers 404 to %s by %s', async (path, method) => {
    expect(await ask(path, method)).toMatchObject({ status: 404, body: '' });
  });
});

import { readFile } from 'node:fs/promises';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { extname, join } from 'node:path';

/** The kinds of file that Excel asks for; nothing else is served. */
const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.png': 'image/png',
  '.xml': 'application/xml; charset=utf-8',
  '.xlsx': 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
};

/** Plain names only, so that no address leads out of the folder. */
const PLAIN_PATH = /^(\/[a-z0-9-]+(\.[a-z0-9-]+)*)+$/i;

/** Serves the files of one folder, read-only. */
export function staticFiles(
  folder: string,
): (request: IncomingMessage, response: ServerResponse) => Promise<void> {
  return async (request, response) => {
    const path = (request.url ?? '/').split('?')[0] ?? '/';
    const type = TYPES[extname(path)];
    const readable = request.method === 'GET' || request.method === 'HEAD';
    if (!readable || type === undefined || !PLAIN_PATH.test(path)) {
      response.writeHead(404).end();
      return;
    }
    try {
      const body = await readFile(join(folder, path));
      response.writeHead(200, {
        'Content-Type': type,
        'Cache-Control': 'no-cache',
        'X-Content-Type-Options': 'nosniff',
        // Excel on the web reads functions.json and functions.js from its own address.
        'Access-Control-Allow-Origin': '*',
      });
      response.end(request.method === 'HEAD' ? undefined : body);
    } catch {
      response.writeHead(404).end();
    }
  };
}

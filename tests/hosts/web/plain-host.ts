import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join } from 'node:path';

/** A web host that sends files and knows nothing else. */
export interface PlainHost {
  /** The page, in a folder of the host. */
  readonly address: string;
  /** The host gets a new version of the page: its service worker differs by a line. */
  renew(): void;
  close(): Promise<void>;
}

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.json': 'application/json',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.webmanifest': 'application/manifest+json',
};

/** Serves a folder of files below /soap/. */
export async function plainHost(folder: string): Promise<PlainHost> {
  let line = '';
  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://host');
    const name = pathname === '/soap/' ? 'index.html' : pathname.replace('/soap/', '');
    readFile(join(folder, name)).then(
      (bytes) => {
        response.setHeader('content-type', TYPES[extname(name)] ?? 'application/octet-stream');
        response.end(
          name === 'service-worker.js' ? Buffer.concat([bytes, Buffer.from(line)]) : bytes,
        );
      },
      () => response.writeHead(404).end(),
    );
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${String(port)}/soap/`,
    renew() {
      line += '\n// newer';
    },
    close: () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(() => {
          resolve();
        });
      }),
  };
}

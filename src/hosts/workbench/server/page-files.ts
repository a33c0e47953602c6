import { readFile, realpath } from 'node:fs/promises';
import { extname, join, sep } from 'node:path';

export interface PageFile {
  readonly type: string;
  readonly bytes: Uint8Array;
}

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.txt': 'text/plain; charset=utf-8',
};

/** Reads one file of the built page; undefined when there is none, or when a link leads out of `root`. */
export async function pageFile(root: string, path: string): Promise<PageFile | undefined> {
  const type = TYPES[extname(path)];
  if (type === undefined) return undefined;
  try {
    const inside = await realpath(root);
    const file = await realpath(join(inside, path));
    return file.startsWith(inside + sep) ? { type, bytes: await readFile(file) } : undefined;
  } catch {
    return undefined;
  }
}

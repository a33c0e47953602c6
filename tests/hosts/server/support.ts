import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { fileStore } from '../../../src/hosts/workbench/server/file-store.ts';
import { nodeFileSteps, type FileSteps } from '../../../src/hosts/workbench/server/file-steps.ts';
import type { SaveAnswer, SaveRequest, SheetEdits } from '../../../src/xlsx/image.ts';
import { versionOf } from '../../../src/xlsx/version.ts';
import { writeWorkbook } from '../../../src/xlsx/write/write-workbook.ts';
import { cellAt, imageOf } from '../../xlsx/support.ts';

/** A folder that lives as long as the test. */
export function testFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'pour-server-'));
  onTestFinished(() => {
    rmSync(folder, { recursive: true, force: true });
  });
  return folder;
}

/** A system on which two names can't change places. */
export const withoutExchange: FileSteps = {
  ...nodeFileSteps,
  exchange: () => Promise.resolve(false),
};

/** The bytes of a little workbook whose A1 holds `first`. */
export function bookBytes(first: string | number): Uint8Array {
  return writeWorkbook({
    sheets: [{ name: 'Notes', cells: [{ row: 0, column: 0, value: first }] }],
  });
}

/** A workbook file in a folder of its own. */
export function bookFile(first: string | number = 'old'): { folder: string; path: string } {
  const folder = testFolder();
  const path = join(folder, 'book.xlsx');
  writeFileSync(path, bookBytes(first));
  return { folder, path };
}

/** One cell's edit of that workbook. */
export function edit(value: string | number): readonly SheetEdits[] {
  return [{ sheet: 'Notes', tables: [], cells: [{ row: 0, column: 0, value }] }];
}

/** A save of that value, with an id of its own each time unless one is given. */
export function saveRequest(
  baseVersion: string,
  value: string | number,
  more: Pick<SaveRequest, 'after'> & { readonly id?: string } = {},
): SaveRequest {
  saves += 1;
  return { id: `save-${String(saves)}`, baseVersion, edits: edit(value), ...more };
}

let saves = 0;

/** What A1 of the workbook at that path holds. */
export const firstOf = (path: string) => cellAt(imageOf(bytesAt(path)), 'Notes', 'A1')?.value;

/** Saves "ours" over what stands at that path. */
export const save = (path: string, steps: FileSteps = nodeFileSteps): Promise<SaveAnswer> =>
  fileStore(path, steps).save(saveRequest(versionOf(bytesAt(path)), 'ours'));

export const sentenceOf = (answer: SaveAnswer): string =>
  answer.kind === 'refused' ? answer.sentence : answer.kind;

export function bytesAt(path: string): Uint8Array {
  return new Uint8Array(readFileSync(path));
}

export interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly body: string;
}

/**
 * One HTTP request with exactly these headers: `fetch` would not send another Host. It goes to this machine,
 * as a browser's for a name under localhost does; not every system finds such names by itself.
 */
export function ask(
  address: string,
  path: string,
  options: { method?: string; headers?: Record<string, string>; body?: string } = {},
): Promise<Answer> {
  const { host, port } = new URL(address);
  return new Promise((resolve, reject) => {
    const sent = request(
      {
        hostname: '127.0.0.1',
        port,
        path,
        method: options.method ?? 'GET',
        headers: { Host: host, ...options.headers },
      },
      (response) => {
        let body = '';
        response.setEncoding('utf8');
        response.on('data', (piece: string) => (body += piece));
        response.on('end', () => {
          resolve({ status: response.statusCode ?? 0, headers: response.headers, body });
        });
      },
    );
    sent.on('error', reject);
    sent.end(options.body);
  });
}

/** Listens to a server's news, piece by piece as they come. */
export function listen(
  address: string,
  root: string,
): Promise<{ next(): Promise<string>; stop(): void }> {
  const { host, port } = new URL(address);
  return new Promise((resolve, reject) => {
    const sent = request(
      { hostname: '127.0.0.1', port, path: `${root}api/events`, headers: { Host: host } },
      (response) => {
        response.setEncoding('utf8');
        const pieces = response[Symbol.asyncIterator]() as AsyncIterator<string>;
        resolve({
          next: async () => String((await pieces.next()).value),
          stop: () => sent.destroy(),
        });
      },
    );
    sent.on('error', reject);
    sent.end();
  });
}

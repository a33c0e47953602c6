import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { SaveAnswer, SaveRequest, WorkbookImage } from '../../../xlsx/image.ts';
import { versionOf } from '../../../xlsx/version.ts';
import { bookLines } from '../book-lines.ts';
import type { KeepAnswer, TextsToKeep } from '../protocol.ts';
import { type BackupRequest, parseBackupRequest } from './backup-request.ts';
import type { FileStore } from './file-store.ts';
import { keptByBrowser, safetyHeaders } from './headers.ts';
import { type TextsOnDisk, parseTexts } from './kept-texts.ts';
import type { LedgerPlace } from './ledger-place.ts';
import type { Listeners } from './listeners.ts';
import { pageFile, type PageFile } from './page-files.ts';
import { readBody } from './read-body.ts';
import { route, type RequestFacts } from './route.ts';
import { parseSaveRequest } from './save-request.ts';

export interface WorkbenchParts {
  readonly store: FileStore;
  readonly listeners: Listeners;
  readonly texts: TextsOnDisk;
  /** The folder of the built page. */
  readonly pageRoot: string;
  /** The one host name that is answered, and the secret that a request must know. */
  readonly place: Pick<LedgerPlace, 'host' | 'secret'>;
}

/** The workbench's server, not yet listening. */
export function workbenchServer(parts: WorkbenchParts): Server {
  const server = createServer((request, response) => {
    const address = server.address();
    const port = typeof address === 'object' && address ? address.port : 0;
    answer(parts, port, request, response).catch((error: unknown) => {
      console.error(error);
      if (!response.headersSent) send(response, 500, 'text/plain', 'Something went wrong here.');
      else response.destroy();
    });
  });
  return server;
}

async function answer(
  parts: WorkbenchParts,
  port: number,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  const to = route(factsOf(request), {
    host: parts.place.host,
    port,
    token: parts.place.secret,
  });
  switch (to.kind) {
    case 'denied':
      send(response, to.status, 'text/plain; charset=utf-8', to.sentence);
      return;
    case 'file': {
      const file = await pageFile(parts.pageRoot, to.path);
      if (file) sendFile(request, response, file);
      else send(response, 404, 'text/plain; charset=utf-8', 'Nothing is here.');
      return;
    }
    case 'book': {
      const read = await parts.store.read();
      if (read.kind === 'read') await sendBook(response, read.workbook);
      else sendJson(response, 422, await parts.store.look());
      return;
    }
    case 'events':
      response.writeHead(200, { ...safetyHeaders, 'Content-Type': 'text/event-stream' });
      parts.listeners.add(response);
      return;
    case 'look':
      sendJson(response, 200, await parts.store.look());
      return;
    case 'take backup':
      await answerWith(request, response, parseBackupRequest, (asked) => takeBackup(parts, asked));
      return;
    case 'leave backup':
      await answerWith(request, response, parseBackupRequest, (asked) => leaveBackup(parts, asked));
      return;
    case 'texts':
      sendJson(response, 200, parts.texts.all());
      return;
    case 'keep texts':
      await answerWith(request, response, parseTexts, (asked) => keepTexts(parts, asked));
      return;
    case 'save':
      await answerWith(request, response, parseSaveRequest, (asked) => save(parts, asked));
  }
}

async function save({ store, listeners }: WorkbenchParts, asked: SaveRequest): Promise<SaveAnswer> {
  const answer = await store.save(asked);
  if (answer.kind === 'saved') listeners.tell({ kind: 'stands', version: answer.version });
  return answer;
}

async function takeBackup({ store, listeners }: WorkbenchParts, { until }: BackupRequest) {
  const { ok, sentence } = await store.takeBackup(until);
  listeners.tell(await store.lookAtBackups());
  return ok ? { kind: 'taken' } : refusal(sentence);
}

async function leaveBackup({ store, listeners }: WorkbenchParts, { until }: BackupRequest) {
  if (until !== undefined) await store.leaveBackup(until);
  listeners.tell(await store.lookAtBackups());
  return { kind: 'left' };
}

async function keepTexts({ texts }: WorkbenchParts, asked: TextsToKeep): Promise<KeepAnswer> {
  try {
    await texts.keep(asked);
    return { kind: 'kept' };
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return refusal(
      `What you began could not be kept in the workbench's own folder (${why}). ` +
        'Make room on the disk or see who may write there, then try again.',
    );
  }
}

/** Reads what was asked, does it and sends the answer; what can't be read is refused. */
async function answerWith<A>(
  request: IncomingMessage,
  response: ServerResponse,
  parse: (text: string) => A | undefined,
  work: (asked: A) => Promise<unknown>,
): Promise<void> {
  const body = await readBody(request);
  if (body === undefined) {
    response.setHeader('Connection', 'close');
    sendJson(response, 413, refusal('This is more than one save can take.'));
    return;
  }
  const asked = parse(body);
  if (asked === undefined) sendJson(response, 400, refusal('This is not a request to save.'));
  else sendJson(response, 200, await work(asked));
}

const refusal = (sentence: string) => ({ kind: 'refused', sentence }) as const;

function factsOf({ method, url, headers, rawHeaders }: IncomingMessage): RequestFacts {
  const site = headers['sec-fetch-site'];
  return {
    method: method ?? '',
    url: url ?? '',
    // Of two host names none is believed.
    host: rawHeaders.filter(isHost).length === 1 ? headers.host : undefined,
    origin: headers.origin,
    contentType: headers['content-type'],
    fetchSite: Array.isArray(site) ? site.join() : site,
  };
}

const isHost = (text: string, at: number): boolean => at % 2 === 0 && /^host$/i.test(text);

/** Sends a file of the page, or word that the browser's own copy is the same. */
function sendFile(
  { headers }: IncomingMessage,
  response: ServerResponse,
  { type, bytes }: PageFile,
): void {
  const tag = `"${versionOf(bytes)}"`;
  response.setHeader('ETag', tag);
  // Not packed: the server is on this machine, where unpacking takes longer than the whole file.
  if (headers['if-none-match'] === tag) send(response, 304, type, '', keptByBrowser);
  else send(response, 200, type, bytes, keptByBrowser);
}

/** Sends line by line, no faster than the page takes them; stops when it goes away. */
async function sendBook(response: ServerResponse, workbook: WorkbookImage): Promise<void> {
  response.writeHead(200, { ...safetyHeaders, 'Content-Type': 'application/x-ndjson' });
  try {
    await pipeline(Readable.from(bookLines(workbook)), response);
  } catch (error) {
    if (!response.destroyed) throw error;
  }
}

function sendJson(response: ServerResponse, status: number, value: unknown): void {
  send(response, status, 'application/json; charset=utf-8', JSON.stringify(value));
}

function send(
  response: ServerResponse,
  status: number,
  type: string,
  content: string | Uint8Array,
  headers = safetyHeaders,
): void {
  response.writeHead(status, { ...headers, 'Content-Type': type });
  response.end(content);
}

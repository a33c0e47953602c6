import { readFile } from 'node:fs/promises';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { bookLines } from '../../../src/hosts/workbench/book-lines.ts';
import type {
  BackupNews,
  FileNews,
  Lost,
  News,
  WrittenInto,
} from '../../../src/hosts/workbench/protocol.ts';
import type { SaveAnswer, SaveRequest, WorkbookImage } from '../../../src/xlsx/image.ts';

/** The policy the page must live with: no eval, nothing from elsewhere, styles also inline. */
export const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; " +
  "connect-src 'self'; font-src 'none'; form-action 'none'; frame-ancestors 'none'; base-uri 'none'";

/** A server for page tests, one after the other: keeps what was saved, and plays the outside world. */
export interface PageServer {
  /** The workbench; at `elsewhere` under it stands an empty page of the same origin. */
  readonly address: string;
  readonly saves: readonly SaveRequest[];
  /** The pane's texts. */
  readonly texts: ReadonlyMap<string, string>;
  /** Begins again for the next test: nothing was saved, changed outside or refused. */
  reset(): void;
  /** What was saved so far is another test's; the page goes on from there. */
  forgetSaves(): void;
  /** Another program changes the file; the page is told, unless `silent`. */
  changeOutside(silent?: boolean): void;
  /** The next saves are refused with this sentence; undefined ends that. */
  refuse(sentence: string | undefined): void;
  /** The file is gone or damaged, or stands there again; the page is told. */
  lose(lost: Lost | undefined): void;
  /** Another program wrote into a state that was replaced, or that is settled; the page is told. */
  writeInto(backup: WrittenInto | undefined): void;
  /** What the page asked about backups, in order. */
  readonly backupsAsked: readonly string[];
  /** The line to the page ends, and no request is answered until the returned function is called. */
  goDown(): () => void;
  /** The next save is made, and its answer lost with the line. */
  loseAnswer(): void;
  close(): Promise<void>;
}

/** Serves the page's files from `folder` and the image from memory, under a path like the real one. */
export async function servePage(
  folder: string,
  imageAt: (version: string) => WorkbookImage,
  // A tab that opens the page again takes its scripts as it compiled them.
  cacheControl = 'max-age=3600',
): Promise<PageServer> {
  let saves: SaveRequest[] = [];
  let lastSaved: string | undefined;
  const texts = new Map<string, string>();
  let lost: Lost | undefined;
  let backups: BackupNews = { kind: 'backups' };
  let backupsAsked: string[] = [];
  let [isDown, losesAnswer] = [false, false];
  const listening = new Set<ServerResponse>();
  let version = 1;
  let refusal: string | undefined;
  const answer = (request: SaveRequest): SaveAnswer => {
    if (refusal !== undefined) return { kind: 'refused', sentence: refusal };
    if (lastSaved === request.id) return { kind: 'saved', version: String(version) };
    if (request.baseVersion !== String(version)) {
      return { kind: 'changed outside', version: String(version) };
    }
    saves.push(request);
    lastSaved = request.id;
    version += 1;
    return { kind: 'saved', version: String(version) };
  };
  const news = (): FileNews => lost ?? { kind: 'stands', version: String(version) };
  const tell = (what: News = news()) => {
    for (const page of listening) page.write(`data: ${JSON.stringify(what)}\n\n`);
  };
  const server = createServer((request, response) => {
    const path = (request.url ?? '').replace('/token/', '');
    if (isDown) {
      response.destroy();
      return;
    }
    response.setHeader('content-security-policy', POLICY);
    if (path === 'api/book') response.end([...bookLines(imageAt(String(version)))].join(''));
    else if (path === 'api/save') {
      void body(request).then((text) => {
        const answered = answer(JSON.parse(text) as SaveRequest);
        if (losesAnswer) response.destroy();
        else json(response, answered);
        losesAnswer = false;
      });
    } else if (path === 'api/file') json(response, news());
    else if (path.endsWith('-backup')) {
      void body(request).then((text) => {
        backupsAsked.push(`${path} ${text}`);
        json(response, { kind: 'taken' });
      });
    } else if (path === 'api/texts' && request.method === 'GET') {
      json(response, Object.fromEntries(texts));
    } else if (path === 'api/texts') {
      void body(request).then((text) => {
        for (const [key, value] of Object.entries(JSON.parse(text) as Record<string, string>)) {
          texts.set(key, value);
        }
        json(response, { kind: 'kept' });
      });
    } else if (path === 'api/events') {
      response.writeHead(200, { 'content-type': 'text/event-stream' });
      response.write(`data: ${JSON.stringify(news())}\n\n`);
      if (backups.writtenInto) response.write(`data: ${JSON.stringify(backups)}\n\n`);
      listening.add(response);
    } else if (path === 'elsewhere') {
      response.setHeader('content-type', 'text/html').end('<link rel="icon" href="data:,">');
    } else {
      response.setHeader('cache-control', cacheControl);
      void file(response, folder, path === '' ? 'index.html' : path);
    }
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${String(port)}/token/`,
    get saves() {
      return saves;
    },
    texts,
    reset() {
      [saves, version, refusal, lost] = [[], 1, undefined, undefined];
      [backups, backupsAsked] = [{ kind: 'backups' }, []];
      texts.clear();
    },
    forgetSaves() {
      saves = [];
    },
    changeOutside(silent = false) {
      version += 1;
      if (!silent) tell();
    },
    lose(next) {
      lost = next;
      tell();
    },
    writeInto(writtenInto) {
      backups = { kind: 'backups', ...(writtenInto ? { writtenInto } : {}) };
      tell(backups);
    },
    get backupsAsked() {
      return backupsAsked;
    },
    goDown() {
      isDown = true;
      for (const page of listening) page.destroy();
      return () => {
        isDown = false;
      };
    },
    loseAnswer() {
      losesAnswer = true;
    },
    refuse(sentence) {
      refusal = sentence;
    },
    close: () =>
      new Promise((resolve) => {
        for (const page of listening) page.end();
        server.closeAllConnections();
        server.close(() => {
          resolve();
        });
      }),
  };
}

const TYPES: Readonly<Record<string, string>> = {
  html: 'text/html; charset=utf-8',
  css: 'text/css',
  js: 'text/javascript',
  json: 'application/json',
};

async function file(response: ServerResponse, folder: string, name: string): Promise<void> {
  try {
    const bytes = await readFile(join(folder, name));
    response.setHeader('content-type', TYPES[name.split('.').at(-1) ?? ''] ?? 'text/plain');
    response.end(bytes);
  } catch {
    response.writeHead(404).end();
  }
}

function json(response: ServerResponse, value: unknown): void {
  response.setHeader('content-type', 'application/json').end(JSON.stringify(value));
}

async function body(request: IncomingMessage): Promise<string> {
  let text = '';
  for await (const chunk of request) text += String(chunk);
  return text;
}

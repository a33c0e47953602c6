import type { SaveAnswer, WorkbookImage } from '../../../xlsx/image.ts';
import { createBookReader } from '../book-lines.ts';
import type { FileNews, KeepAnswer, Lost } from '../protocol.ts';
import { connect } from './connection.ts';
import { type FileHome, FileLost, helpBesidePage } from './file-home.ts';

/**
 * The workbook that this page's own server holds, asked below the page's own address only. After the signal nothing is
 * read or heard any more.
 */
export function createServerHome(signal: AbortSignal): FileHome {
  const connection = connect(signal);
  return {
    connection,
    book: (told) => readBook(signal, told),
    functionHelp: helpBesidePage,
    async texts() {
      const response = await fetch('api/texts', { cache: 'no-store', signal });
      if (!response.ok) throw new Error(await sentenceOf(response));
      return (await response.json()) as Readonly<Record<string, string>>;
    },
    async keepTexts(texts) {
      const answer = await post<KeepAnswer>('api/texts', texts, { outlivesPage: true });
      if (answer === undefined) connection.end();
      return answer ?? { kind: 'refused', sentence: NO_ANSWER };
    },
    backups: {
      async take(until) {
        const answer = await post<Taken>('api/take-backup', { until });
        return answer?.kind === 'taken' ? undefined : (answer?.sentence ?? NO_ANSWER);
      },
      async leave(until) {
        await post('api/leave-backup', { until });
      },
    },
    async look() {
      const answer = await asked<FileNews>('api/file', { cache: 'no-store' });
      if (answer === undefined) connection.end();
      return answer;
    },
    async save(request) {
      for (;;) {
        const answer = await post<SaveAnswer>('api/save', request);
        if (answer !== undefined) return answer;
        connection.end();
        await connection.opened();
      }
    },
    sendLast: (request) => void post('api/save', request, { outlivesPage: true }),
  };
}

async function readBook(
  signal: AbortSignal,
  told: (share: number) => Promise<void>,
): Promise<WorkbookImage> {
  const response = await fetch('api/book', { cache: 'no-store', signal });
  if (response.status === 422) throw new FileLost((await response.json()) as Lost);
  if (!response.ok) throw new Error(await sentenceOf(response));
  const reader = createBookReader();
  // The server is on this machine: coming takes an instant, reading does not.
  for (const line of (await response.text()).trimEnd().split('\n')) {
    reader.take(line);
    await told(reader.share);
  }
  return reader.finish();
}

type Taken = { readonly kind: 'taken' } | { readonly kind: 'refused'; readonly sentence: string };

const NO_ANSWER =
  'The workbench does not answer. Is it still running in its window? Start it again there.';

/** Browsers send no more than 64 KiB for a page that has gone. */
const MOST_AT_LAST = 60_000;

function post<T>(
  path: string,
  value: unknown,
  { outlivesPage } = { outlivesPage: false },
): Promise<T | undefined> {
  const body = new TextEncoder().encode(JSON.stringify(value));
  return asked<T>(path, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body,
    keepalive: outlivesPage && body.length < MOST_AT_LAST,
  });
}

/** The server's answer; undefined where none, or none of our server's, came. */
async function asked<T>(path: string, init: RequestInit): Promise<T | undefined> {
  try {
    const response = await fetch(path, init);
    const isOurs = response.headers.get('content-type')?.includes('json') ?? false;
    return isOurs ? ((await response.json()) as T) : undefined;
  } catch {
    return undefined;
  }
}

/** The server's own sentence, which it gives as JSON or as plain text. */
async function sentenceOf(response: Response): Promise<string> {
  const text = await response.text();
  const isJson = response.headers.get('content-type')?.includes('json') ?? false;
  if (isJson) return (JSON.parse(text) as { readonly sentence: string }).sentence;
  return text || `The workbench answered ${String(response.status)}.`;
}

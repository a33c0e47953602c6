import type { SaveAnswer, SaveRequest, WorkbookImage } from '../../../xlsx/image.ts';
import { createBookReader } from '../book-lines.ts';
import type { FileNews, KeepAnswer, Lost, TextsToKeep } from '../protocol.ts';
import { connect, type Connection } from './connection.ts';
import type { FunctionHelp } from './function-help.ts';

/** What the page asks of the workbench's own server, below the page's own address only. */
export interface ServerApi {
  readonly connection: Connection;
  /**
   * Reads the workbook, and tells after each piece which share of it is read. Throws with a sentence
   * when the server cannot.
   */
  book(told: (share: number) => Promise<void>): Promise<WorkbookImage>;
  /** What the functions tell of themselves; nothing where that was not built. */
  functionHelp(): Promise<readonly FunctionHelp[]>;
  /** The pane's texts that the server holds. */
  texts(): Promise<Readonly<Record<string, string>>>;
  /** Has the pane's texts kept; every failure comes back as a refusal with a sentence. */
  keepTexts(texts: TextsToKeep): Promise<KeepAnswer>;
  /**
   * Has a backup put in the file's place, the one that was it until that time or the newest; the sentence
   * says why it was not.
   */
  takeBackup(until?: number): Promise<string | undefined>;
  /** What was written into the backup of that time is left there, and no more is said of it. */
  leaveBackup(until: number): Promise<void>;
  /** What stands in the file's place now; undefined where no server answers. */
  look(): Promise<FileNews | undefined>;
  /**
   * Saves. Where the line ends before the answer, asks again as soon as it is back, since nobody knows
   * whether it was saved: so this resolves only once that is known.
   */
  save(request: SaveRequest): Promise<SaveAnswer>;
  /** Sends a save while the page goes away, and hears no answer. */
  sendLast(request: SaveRequest): void;
}

/** The server that served this page, until the signal: then nothing is read or heard any more. */
export function createServerApi(signal: AbortSignal): ServerApi {
  const connection = connect(signal);
  return {
    connection,
    book: (told) => readBook(signal, told),
    async functionHelp() {
      const response = await fetch('functions.json');
      if (!response.ok) return [];
      return ((await response.json()) as { readonly functions: readonly FunctionHelp[] }).functions;
    },
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
    async takeBackup(until) {
      const answer = await post<Taken>('api/take-backup', { until });
      return answer?.kind === 'taken' ? undefined : (answer?.sentence ?? NO_ANSWER);
    },
    async leaveBackup(until) {
      await post('api/leave-backup', { until });
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

/** There is no workbook to be read in the file's place. */
export class FileLost extends Error {
  override readonly name = 'FileLost';
  readonly backup: number | undefined;

  constructor({ sentence, backup }: Lost) {
    super(sentence);
    this.backup = backup;
  }
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

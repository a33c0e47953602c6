import type { SaveAnswer, SaveRequest, WorkbookImage } from '../../xlsx/image.ts';
import { createBookReader } from '../book-lines.ts';
import type { FunctionHelp } from './function-help.ts';

/** What the page asks of the workbench's own server, below the page's own address only. */
export interface ServerApi {
  /**
   * Reads the workbook, and tells after each piece which share of it is read. Throws with a sentence
   * when the server cannot.
   */
  book(told: (share: number) => Promise<void>): Promise<WorkbookImage>;
  /** What the functions tell of themselves; nothing where that was not built. */
  functionHelp(): Promise<readonly FunctionHelp[]>;
  /** Saves; every failure comes back as a refusal with a sentence. */
  save(request: SaveRequest): Promise<SaveAnswer>;
  /** Calls back with the file's version whenever the server says it changed. */
  onOutsideChange(listener: (version: string) => void): void;
}

/** The server that served this page, until the signal: then nothing is read or heard any more. */
export function createServerApi(signal: AbortSignal): ServerApi {
  return {
    async book(told) {
      const response = await fetch('api/book', { cache: 'no-store', signal });
      if (!response.ok) throw new Error(await sentenceOf(response));
      const reader = createBookReader();
      // The server is on this machine: coming takes an instant, reading does not.
      for (const line of (await response.text()).trimEnd().split('\n')) {
        reader.take(line);
        await told(reader.share);
      }
      return reader.finish();
    },
    async functionHelp() {
      const response = await fetch('functions.json');
      if (!response.ok) return [];
      return ((await response.json()) as { readonly functions: readonly FunctionHelp[] }).functions;
    },
    async save(request) {
      try {
        const response = await fetch('api/save', {
          method: 'POST',
          headers: { 'content-type': 'application/json' },
          body: JSON.stringify(request),
        });
        const type = response.headers.get('content-type') ?? '';
        if (type.includes('application/json')) return (await response.json()) as SaveAnswer;
        return { kind: 'refused', sentence: await sentenceOf(response) };
      } catch {
        return {
          kind: 'refused',
          sentence: 'The workbench does not answer. Is it still running in its window?',
        };
      }
    },
    onOutsideChange(listener) {
      const events = new EventSource('api/events');
      events.addEventListener('message', ({ data }: MessageEvent<string>) => {
        listener((JSON.parse(data) as { readonly version: string }).version);
      });
      signal.addEventListener('abort', () => {
        events.close();
      });
    },
  };
}

/** The server's own sentence, which it gives as JSON or as plain text. */
async function sentenceOf(response: Response): Promise<string> {
  const text = await response.text();
  const isJson = response.headers.get('content-type')?.includes('json') ?? false;
  if (isJson) return (JSON.parse(text) as { readonly sentence: string }).sentence;
  return text || `The workbench answered ${String(response.status)}.`;
}

import type { SaveAnswer, SaveRequest, WorkbookImage } from '../../xlsx/image.ts';

/** What the page asks of the workbench's own server, below the page's own address only. */
export interface ServerApi {
  /** Reads the workbook; throws with a sentence when the server cannot. */
  book(): Promise<WorkbookImage>;
  /** Saves; every failure comes back as a refusal with a sentence. */
  save(request: SaveRequest): Promise<SaveAnswer>;
  /** Calls back with the file's version whenever the server says it changed. */
  onOutsideChange(listener: (version: string) => void): void;
}

/** The server that served this page. */
export function createServerApi(): ServerApi {
  return {
    async book() {
      const response = await fetch('api/book', { cache: 'no-store' });
      if (!response.ok) throw new Error(await sentenceOf(response));
      return (await response.json()) as WorkbookImage;
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
      const hear = (event: MessageEvent<string>) => {
        listener(versionIn(event.data));
      };
      events.addEventListener('message', hear);
      events.addEventListener('changed', hear as (event: Event) => void);
    },
  };
}

const sentenceOf = async (response: Response): Promise<string> =>
  (await response.text()).slice(0, 500) || `The workbench answered ${String(response.status)}.`;

function versionIn(data: string): string {
  try {
    const said: unknown = JSON.parse(data);
    if (typeof said === 'object' && said !== null && 'version' in said) return String(said.version);
  } catch {
    // Not JSON: the data is the version itself.
  }
  return data;
}

import type { ServerResponse } from 'node:http';
import type { FileNews } from '../protocol.ts';

/** The pages that listen for news of the file. */
export interface Listeners {
  /** The page hears at once what was told last. */
  add(response: ServerResponse): void;
  /** Tells every page; what was told last is not told again. */
  tell(news: FileNews): void;
  close(): void;
}

/** How often a quiet line is kept open. */
const KEEP_OPEN_MS = 25_000;

/** Server-sent events to any number of pages. */
export function listeners(first: FileNews): Listeners {
  const open = new Set<ServerResponse>();
  let last = JSON.stringify(first);
  const timer = setInterval(() => {
    for (const response of open) response.write(': still here\n\n');
  }, KEEP_OPEN_MS);
  timer.unref();
  return {
    add(response) {
      open.add(response);
      response.on('close', () => open.delete(response));
      response.write(`data: ${last}\n\n`);
    },
    tell(news) {
      const text = JSON.stringify(news);
      if (text === last) return;
      last = text;
      for (const response of open) response.write(`data: ${text}\n\n`);
    },
    close() {
      clearInterval(timer);
      for (const response of open) response.end();
    },
  };
}

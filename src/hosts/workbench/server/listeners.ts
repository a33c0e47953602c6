import type { ServerResponse } from 'node:http';

/** The pages that listen for news of the file. */
export interface Listeners {
  add(response: ServerResponse): void;
  tell(news: { readonly kind: 'changed outside'; readonly version: string }): void;
  close(): void;
}

/** How often a quiet line is kept open. */
const KEEP_OPEN_MS = 25_000;

/** Server-sent events to any number of pages. */
export function listeners(): Listeners {
  const open = new Set<ServerResponse>();
  const timer = setInterval(() => {
    for (const response of open) response.write(': still here\n\n');
  }, KEEP_OPEN_MS);
  timer.unref();
  return {
    add(response) {
      open.add(response);
      response.on('close', () => open.delete(response));
      response.write(': listening\n\n');
    },
    tell(news) {
      for (const response of open) response.write(`data: ${JSON.stringify(news)}\n\n`);
    },
    close() {
      clearInterval(timer);
      for (const response of open) response.end();
    },
  };
}

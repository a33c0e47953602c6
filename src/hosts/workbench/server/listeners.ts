import type { ServerResponse } from 'node:http';
import type { FileNews, News } from '../protocol.ts';

/** The pages that listen for news of the file and of its backups. */
export interface Listeners {
  /** The page hears at once what was told last. */
  add(response: ServerResponse): void;
  /** Tells every page; what was told last of the same matter is not told again. */
  tell(news: News): void;
  close(): void;
}

/** How often a quiet line is kept open. */
const KEEP_OPEN_MS = 25_000;

/** What every page takes for granted of the backups as it begins to listen. */
const NOTHING = JSON.stringify({ kind: 'backups' } satisfies News);

/** Server-sent events to any number of pages. */
export function listeners(first: FileNews): Listeners {
  const open = new Set<ServerResponse>();
  const last = { file: JSON.stringify(first), backups: NOTHING };
  const timer = setInterval(() => {
    for (const response of open) response.write(': still here\n\n');
  }, KEEP_OPEN_MS);
  timer.unref();
  return {
    add(response) {
      open.add(response);
      response.on('close', () => open.delete(response));
      response.write(`data: ${last.file}\n\n`);
      if (last.backups !== NOTHING) response.write(`data: ${last.backups}\n\n`);
    },
    tell(news) {
      const matter = news.kind === 'backups' ? 'backups' : 'file';
      const text = JSON.stringify(news);
      if (text === last[matter]) return;
      last[matter] = text;
      for (const response of open) response.write(`data: ${text}\n\n`);
    },
    close() {
      clearInterval(timer);
      for (const response of open) response.end();
    },
  };
}

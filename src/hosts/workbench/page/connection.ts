import type { BackupNews, FileNews, News } from '../protocol.ts';

/** The page's line to its server, which ends with the server and comes back with it. */
export interface Connection {
  readonly isOpen: boolean;
  /** Calls back whenever the line ends or is there again. */
  onChange(listener: () => void): void;
  /** Calls back with news of the file, also with what was told before. */
  onNews(listener: (news: FileNews) => void): void;
  /** The same with news of its backups. */
  onBackups(listener: (news: BackupNews) => void): void;
  /** A request found no server: the line counts as ended until the server is heard again. */
  end(): void;
  /** Resolves once the line is there. */
  opened(): Promise<void>;
}

/** How long to wait before calling the server again. */
const CALL_AGAIN_MS = 1_000;

/** Listens to the server until the signal, calling it again whenever the line ends. */
export function connect(signal: AbortSignal): Connection {
  const changed = new Set<() => void>();
  const [file, backups] = [createHeard<FileNews>(), createHeard<BackupNews>()];
  // The page itself has just come from there.
  let isOpen = true;
  const become = (next: boolean) => {
    if (isOpen === next) return;
    isOpen = next;
    for (const listener of changed) listener();
  };
  const end = keepCalling(signal, {
    become,
    bring(news) {
      if (news.kind === 'backups') backups.bring(news);
      else file.bring(news);
    },
  });
  return {
    get isOpen() {
      return isOpen;
    },
    onChange: (listener) => void changed.add(listener),
    onNews: file.add,
    onBackups: backups.add,
    end,
    opened: () =>
      new Promise((resolve) => {
        const look = () => {
          if (!isOpen) return;
          changed.delete(look);
          resolve();
        };
        changed.add(look);
        look();
      }),
  };
}

interface Hears {
  /** The line is open, or has ended. */
  become(isOpen: boolean): void;
  bring(news: News): void;
}

/** Listeners for one matter, who hear what was brought last, too. */
function createHeard<T>() {
  const listeners = new Set<(news: T) => void>();
  let last: T | undefined;
  return {
    add(listener: (news: T) => void) {
      listeners.add(listener);
      if (last !== undefined) listener(last);
    },
    bring(news: T) {
      last = news;
      for (const listener of listeners) listener(news);
    },
  };
}

/** Calls the server, and again a while after each end. Returns the way to hold the line for ended. */
function keepCalling(signal: AbortSignal, { become, bring }: Hears): () => void {
  let source: EventSource | undefined;
  const call = () => {
    if (signal.aborted) return;
    source = new EventSource('api/events');
    source.addEventListener('open', () => {
      become(true);
      // A server says of backups only what there is to say.
      bring({ kind: 'backups' });
    });
    source.addEventListener('message', ({ data }: MessageEvent<string>) => {
      bring(JSON.parse(data) as News);
    });
    source.addEventListener('error', end);
  };
  const end = () => {
    if (source === undefined) return;
    source.close();
    source = undefined;
    become(false);
    setTimeout(call, CALL_AGAIN_MS);
  };
  call();
  signal.addEventListener('abort', () => source?.close());
  return end;
}

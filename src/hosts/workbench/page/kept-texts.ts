import type { HostMemory } from '../../../workbook/port.ts';
import type { FileHome } from './file-home.ts';

/** The pane's memory, which the server keeps on its disk. */
export interface KeptTexts extends HostMemory {
  /** Whether the server does not hold all of it yet. */
  readonly isWaiting: boolean;
  /** Sends what waits for an answer to what went before, since the page goes away and hears none. */
  leave(): void;
}

/** Begins with what the server holds; what is set goes there at once, or as soon as it is back. */
export function createKeptTexts(
  first: Readonly<Record<string, string>>,
  { keepTexts, connection }: Pick<FileHome, 'keepTexts' | 'connection'>,
): KeptTexts {
  const texts = new Map(Object.entries(first));
  let waiting = new Map<string, string | null>();
  let sending: Promise<void> | undefined;
  const send = async () => {
    while (waiting.size > 0) {
      const taken = waiting;
      waiting = new Map();
      const answer = await keepTexts(Object.fromEntries(taken));
      if (answer.kind === 'kept') continue;
      waiting = new Map([...taken, ...waiting]);
      throw new Error(answer.sentence);
    }
  };
  const sendOnce = (): Promise<void> =>
    (sending ??= send().finally(() => {
      sending = undefined;
    }));
  // Whoever must know asks `kept`.
  const sendQuietly = () => void sendOnce().catch(() => undefined);
  connection.onChange(() => {
    if (connection.isOpen) sendQuietly();
  });
  return {
    get isWaiting() {
      return waiting.size > 0 || sending !== undefined;
    },
    get: (key) => texts.get(key),
    set(key, value) {
      texts.set(key, value);
      waiting.set(key, value);
      sendQuietly();
    },
    delete(key) {
      texts.delete(key);
      waiting.set(key, null);
      sendQuietly();
    },
    leave() {
      if (waiting.size > 0) void keepTexts(Object.fromEntries(waiting));
    },
    async kept() {
      do await sendOnce();
      while (waiting.size > 0);
    },
  };
}

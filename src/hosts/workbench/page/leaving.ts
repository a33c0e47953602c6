import type { KeptTexts } from './kept-texts.ts';
import type { Saver } from './saver.ts';

/** What could be lost when the page goes away. */
export interface AtRisk {
  readonly saver: Saver;
  readonly texts: KeptTexts;
  /** Whether a cell is being typed in. */
  readonly isTyping: () => boolean;
}

/**
 * Keeps what can be kept when the page goes away, and asks the maker first where something can't. Asks no
 * more once the returned function was called.
 */
export function guardLeaving({ saver, texts, isTyping }: AtRisk): () => void {
  const asking = new AbortController();
  const ask = (event: BeforeUnloadEvent) => {
    if (saver.hasUnsaved || texts.isWaiting || isTyping()) event.preventDefault();
  };
  window.addEventListener('beforeunload', ask, { signal: asking.signal });
  // Leaving the window is a good moment: do not wait for the pause after typing.
  document.addEventListener('visibilitychange', () => {
    if (document.hidden && saver.state.kind === 'saving') void saver.saveNow();
  });
  window.addEventListener('pagehide', () => {
    saver.leave();
    texts.leave();
  });
  return () => {
    asking.abort();
  };
}

/** How far a piece of long work is, as the page shows it. */
export interface Progress {
  readonly step: string;
  /** What of it is done, from 0 to 1; undefined where nobody can tell. */
  readonly share: number | undefined;
}

/** Shows how far the work is, then lets the page draw and answer. Throws when the work was stopped. */
export type Pause = (step: string, share?: number) => Promise<void>;

/** The pauses of a piece of work that a signal stops. */
export const pausing =
  (signal: AbortSignal, show: (progress: Progress) => void): Pause =>
  async (step, share) => {
    signal.throwIfAborted();
    show({ step, share });
    await nextTask();
    signal.throwIfAborted();
  };

/** Resolves after whatever waits: drawing, keys, clicks. Unlike a timer it adds no delay of its own. */
export function nextTask(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(undefined);
  });
}

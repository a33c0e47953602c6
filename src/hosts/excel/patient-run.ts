import type { Run } from './apply-change.ts';

/** Longer than Excel takes to hand over five years of moves. */
const PATIENCE_MS = 60_000;

/** A promise kept after so many milliseconds. */
export type Wait = (ms: number) => Promise<void>;

/**
 * Gives up on a sync that Excel does not answer within a minute, as Excel itself does: with a fault of
 * code Timeout. Whether the work was done is then not known. Without this the pane would wait for ever.
 */
export function patientRun(run: Run, wait: Wait): Run {
  return (batch) =>
    run((context) => {
      const sync = context.sync.bind(context);
      const giveUp = async (): Promise<never> => {
        await wait(PATIENCE_MS);
        throw Object.assign(new Error('Excel did not answer.'), { code: 'Timeout' });
      };
      context.sync = (passed) => Promise.race([sync(passed), giveUp()]);
      return batch(context);
    });
}

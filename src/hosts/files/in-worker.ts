import { workerAnswer } from '../worker-answer.ts';
import type { JobAnswers, Job } from './other-workbooks.ts';

/** Has a worker read or write another workbook; as `workerAnswer`. */
export const inWorker = <K extends Job['kind']>(
  job: Job & { readonly kind: K },
  given: Transferable[],
  signal: AbortSignal,
): Promise<JobAnswers[K] | undefined> =>
  workerAnswer<JobAnswers[K]>(
    () =>
      new Worker(
        /* webpackChunkName: "other-workbooks" */ new URL('./other-workbooks.ts', import.meta.url),
      ),
    job,
    given,
    signal,
  );

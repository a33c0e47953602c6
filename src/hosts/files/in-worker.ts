import type { JobAnswers, Job } from './other-workbooks.ts';

/**
 * Has a worker do a job, so that the page can answer meanwhile, and ends the worker whatever comes of it.
 * What is in `given` is moved there, not copied. Undefined where the worker failed; throws where `signal`
 * stopped it.
 */
export async function inWorker<K extends Job['kind']>(
  job: Job & { readonly kind: K },
  given: Transferable[],
  signal: AbortSignal,
): Promise<JobAnswers[K] | undefined> {
  signal.throwIfAborted();
  let worker: Worker | undefined;
  try {
    worker = new Worker(
      /* webpackChunkName: "other-workbooks" */ new URL('./other-workbooks.ts', import.meta.url),
    );
    return (await answerOf(worker, job, given, signal)) as JobAnswers[K];
  } catch {
    signal.throwIfAborted();
    return undefined;
  } finally {
    worker?.terminate();
  }
}

function answerOf(
  worker: Worker,
  job: Job,
  given: Transferable[],
  signal: AbortSignal,
): Promise<unknown> {
  return new Promise((resolve, reject) => {
    const fail = () => {
      reject(new Error('The worker failed.'));
    };
    worker.onmessage = ({ data }) => {
      resolve(data);
    };
    worker.onerror = fail;
    worker.onmessageerror = fail;
    signal.addEventListener('abort', fail, { once: true });
    worker.postMessage(job, given);
  });
}

/**
 * Has a new worker do one job, so that the page can answer meanwhile, and ends the worker whatever comes of it.
 * What is in `given` is moved there, not copied. Undefined where the worker failed; throws where `signal`
 * stopped it.
 */
export async function workerAnswer<A>(
  start: () => Worker,
  job: unknown,
  given: Transferable[] = [],
  signal?: AbortSignal,
): Promise<A | undefined> {
  signal?.throwIfAborted();
  let worker: Worker | undefined;
  try {
    worker = start();
    return (await answerOf(worker, job, given, signal)) as A;
  } catch {
    signal?.throwIfAborted();
    return undefined;
  } finally {
    worker?.terminate();
  }
}

function answerOf(
  worker: Worker,
  job: unknown,
  given: Transferable[],
  signal: AbortSignal | undefined,
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
    signal?.addEventListener('abort', fail, { once: true });
    worker.postMessage(job, given);
  });
}

import type { Refused } from '../../../xlsx/refusal.ts';
import { workerAnswer } from '../../worker-answer.ts';
import type { BookAnswers, BookJob } from './book-work.ts';

/** Has a worker open a workbook or put edits into it. */
export async function inBookWorker<K extends BookJob['kind']>(
  job: BookJob & { readonly kind: K },
): Promise<BookAnswers[K] | Refused> {
  const answer = await workerAnswer<BookAnswers[K]>(
    () =>
      new Worker(/* webpackChunkName: "book-work" */ new URL('./book-work.ts', import.meta.url)),
    job,
  );
  return answer ?? { kind: 'refused', sentence: BROKE_OFF };
}

const BROKE_OFF =
  'The part of Pour Ledger that reads and writes workbooks broke off; nothing was changed. ' +
  'Close other programs if the device is short of memory, then try again.';

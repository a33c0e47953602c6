import type { CopyRead, ValueWorkbook } from '../../workbook/port.ts';
import { readTables } from '../../xlsx/read/read-tables.ts';
import { writeWorkbook } from '../../xlsx/write/write-workbook.ts';
import { describeValues } from './value-workbook.ts';

/** What the page asks of the worker: one job, to which it answers with one message. */
export type Job =
  | { readonly kind: 'read'; readonly bytes: Uint8Array }
  | { readonly kind: 'write'; readonly workbook: ValueWorkbook };

/** The answer to a job of a kind: what was read, or the bytes of the new workbook. */
export interface JobAnswers {
  readonly read: CopyRead;
  readonly write: Uint8Array;
}

// The script of the worker. What goes wrong here reaches the page as the worker's `error`.
self.onmessage = ({ data: job }: MessageEvent<Job>) => {
  if (job.kind === 'read') self.postMessage(readTables(job.bytes));
  else {
    const bytes = writeWorkbook(describeValues(job.workbook));
    self.postMessage(bytes, { transfer: [bytes.buffer] });
  }
};
self.onmessageerror = () => {
  throw new Error('What the page sent could not be taken.');
};

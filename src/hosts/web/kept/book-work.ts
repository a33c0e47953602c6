import type { SheetEdits } from '../../../xlsx/image.ts';
import { checkedPatch } from '../../../xlsx/patch/checked-patch.ts';
import { readWorkbook } from '../../../xlsx/read/read-workbook.ts';
import type { Refused } from '../../../xlsx/refusal.ts';
import { bookLines } from '../../workbench/book-lines.ts';

/** What the page asks of the worker: to open a workbook's bytes, or to put edits into them. */
export type BookJob =
  | { readonly kind: 'open'; readonly name: string; readonly bytes: Uint8Array }
  | {
      readonly kind: 'save';
      readonly name: string;
      readonly bytes: Uint8Array;
      readonly edits: readonly SheetEdits[];
    };

export interface Opened {
  readonly kind: 'opened';
  /** As a server would send them. */
  readonly lines: readonly string[];
  readonly version: string;
}

export interface Saved {
  readonly kind: 'saved';
  readonly bytes: Uint8Array;
  readonly version: string;
}

export interface BookAnswers {
  readonly open: Opened | Refused;
  readonly save: Saved | Refused;
}

function answer(job: BookJob): Opened | Saved | Refused {
  if (job.kind === 'open') {
    const read = readWorkbook(job.bytes, job.name);
    if (read.kind === 'refused') return read;
    const { workbook } = read;
    return { kind: 'opened', lines: [...bookLines(workbook)], version: workbook.version };
  }
  const made = checkedPatch(job.bytes, job.edits, job.name);
  if (made.kind === 'refused') return made;
  return { kind: 'saved', bytes: made.bytes, version: made.read.workbook.version };
}

// The script of the worker. What goes wrong here reaches the page as the worker's `error`.
self.onmessage = ({ data }: MessageEvent<BookJob>) => {
  self.postMessage(answer(data));
};

import type { Day } from '../../domain/kernel/day.ts';
import { demoFile, emptyFile } from '../../starter/file/starter-file.ts';

/** Which workbook to make: the demo, its season about to begin on that day, or one for a maker's own. */
export type FreshBook = { readonly kind: 'demo'; readonly today: Day } | { readonly kind: 'empty' };

// The script of a worker: the bytes of the workbook are its one answer.
self.onmessage = ({ data }: MessageEvent<FreshBook>) => {
  self.postMessage(data.kind === 'demo' ? demoFile(data.today) : emptyFile());
};

import type { Batch, Book } from '../../src/domain/book/book.ts';
import { batchStates } from '../../src/domain/book/words.ts';
import { count } from '../../src/domain/kernel/count.ts';
import { nameKey } from '../../src/domain/kernel/names.ts';
import { day } from '../format.ts';
import type { RecentEntry } from '../parts/recent-list.ts';

/** The batches, newest first. */
export function recentBatches(book: Book): RecentEntry[] {
  return [...book.batches.values()]
    .reverse()
    .sort((a, b) => Math.floor(b.poured) - Math.floor(a.poured))
    .map((batch) => ({
      id: batch.batch,
      name: batch.design.name,
      details: `${day(batch.poured)} · ${count(batch.good ?? batch.bars, 'bar')}`,
      isUndone: isUndoneBatch(batch),
    }));
}

/** Whether a batch was taken back, as its State says. */
export const isUndoneBatch = ({ state }: Batch): boolean =>
  nameKey(state) === nameKey(batchStates.undone);

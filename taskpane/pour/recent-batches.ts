import type { Book } from '../../src/domain/book/book.ts';
import { count } from '../../src/domain/kernel/count.ts';
import { isUndone } from '../../src/domain/stock/batch-moves.ts';
import { day } from '../format.ts';
import type { RecentEntry } from '../parts/recent-list.ts';

/** What a batch without a design is called. */
export const SHAPED_AHEAD = 'Pieces shaped ahead';

/** The batches, newest first. */
export function recentBatches(book: Book): RecentEntry[] {
  return [...book.batches.values()]
    .reverse()
    .sort((a, b) => Math.floor(b.poured) - Math.floor(a.poured))
    .map((batch) => ({
      id: batch.batch,
      name: batch.design?.name ?? SHAPED_AHEAD,
      details:
        batch.design === undefined
          ? day(batch.poured)
          : `${day(batch.poured)} · ${count(batch.good ?? batch.bars, 'bar')}`,
      isUndone: isUndone(book, batch),
    }));
}

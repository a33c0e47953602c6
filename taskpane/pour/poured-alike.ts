import { nothing } from 'lit';
import type { Batch, Book } from '../../src/domain/book/book.ts';
import { count } from '../../src/domain/kernel/count.ts';
import { nameKey } from '../../src/domain/kernel/names.ts';
import type { NewBatch } from '../../src/domain/ledger/posting.ts';
import { isUndone } from '../../src/domain/stock/batch-moves.ts';
import { day } from '../format.ts';
import { SHAPED_AHEAD } from './recent-batches.ts';
import { noticeBar } from '../parts/notice.ts';

/** Batches that stand in the book with the same design, day and bars started: perhaps the very same pour. */
export const pouredAlike = (book: Book, { design, poured, bars }: NewBatch): readonly Batch[] =>
  [...book.batches.values()].filter(
    (batch) =>
      Math.floor(batch.poured) === Math.floor(poured) &&
      bars.eq(batch.bars) &&
      nameKey(batch.design?.name ?? '') === nameKey(design) &&
      !isUndone(book, batch),
  );

/** Asks whether a pour is recorded a second time; nothing where none is like it. */
export function alikeNotice(alike: readonly Batch[]) {
  const [first] = alike;
  if (first === undefined) return nothing;
  const ids = alike.map(({ batch }) => batch).join(', ');
  return noticeBar({
    kind: 'warn',
    text:
      `${count(first.bars, 'bar')} of ${first.design?.name ?? SHAPED_AHEAD} are recorded for ${day(first.poured)} ` +
      `already: ${ids}. Record this pour only if you poured once more.`,
  });
}

import type { Batch, Book, Move } from '../book/book.ts';
import { saysUndone } from '../book/words.ts';
import { nameKey } from '../kernel/names.ts';
import { oncePer } from '../kernel/once-per.ts';
import { live } from './reversals.ts';

/** The moves that name one batch, in the book's order. */
export interface BatchMoves {
  readonly all: readonly Move[];
  /** Those that were not taken back. */
  readonly live: readonly Move[];
}

const nothing: BatchMoves = { all: [], live: [] };

/** The moves of a batch by its `nameKey`. */
export const movesOfBatch = (book: Book, batchKey: string): BatchMoves =>
  movesByBatch(book).get(batchKey) ?? nothing;

/** The moves of all batches that any names, by `nameKey`; the ledger is sorted by batch when first asked for. */
export const movesByBatch: (book: Book) => ReadonlyMap<string, BatchMoves> = oncePer(sortByBatch);

/** What a pour itself writes; sales and losses of its bars later on are no part of it. */
const pourReasons: readonly Move['reason'][] = ['used', 'left over', 'spare', 'made'];
export const isOfPour = ({ reason }: Move): boolean => pourReasons.includes(reason);

/** Whether a batch was taken back, as its State or its moves say: Batches may do without State. */
export function isUndone(book: Book, { batch, state }: Batch): boolean {
  if (saysUndone(state)) return true;
  const { all, live: counting } = movesOfBatch(book, nameKey(batch));
  return all.some(isOfPour) && !counting.some(isOfPour);
}

function sortByBatch({ ledger: { moves } }: Book): ReadonlyMap<string, BatchMoves> {
  const index = new Map<string, { all: Move[]; live: Move[] }>();
  const counting = new Set(live(moves));
  for (const move of moves) {
    if (move.batch === '') continue;
    const key = nameKey(move.batch);
    const found = index.get(key) ?? { all: [], live: [] };
    index.set(key, found);
    found.all.push(move);
    if (counting.has(move)) found.live.push(move);
  }
  return index;
}

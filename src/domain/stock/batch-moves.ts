import type { Book, Move } from '../book/book.ts';
import { nameKey } from '../kernel/names.ts';
import { live } from './reversals.ts';

/** The moves that name one batch, in the book's order. */
export interface BatchMoves {
  readonly all: readonly Move[];
  /** Those that were not taken back. */
  readonly live: readonly Move[];
}

const nothing: BatchMoves = { all: [], live: [] };
const indexes = new WeakMap<Book, ReadonlyMap<string, BatchMoves>>();

/** The moves of a batch by its `nameKey`. The first call for a book sorts its ledger by batch once. */
export function movesOfBatch(book: Book, batchKey: string): BatchMoves {
  let index = indexes.get(book);
  if (index === undefined) {
    index = makeIndex(book);
    indexes.set(book, index);
  }
  return index.get(batchKey) ?? nothing;
}

function makeIndex({ ledger: { moves } }: Book): ReadonlyMap<string, BatchMoves> {
  const index = new Map<string, { all: Move[]; live: Move[] }>();
  const counting = new Set(live(moves));
  for (const move of moves) {
    const key = nameKey(move.batch);
    const found = index.get(key) ?? { all: [], live: [] };
    index.set(key, found);
    found.all.push(move);
    if (counting.has(move)) found.live.push(move);
  }
  return index;
}

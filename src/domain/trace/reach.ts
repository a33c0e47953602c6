import type { Book, Item } from '../book/book.ts';
import { nameKey } from '../kernel/names.ts';
import { flowsOf, type Leaving } from './flows.ts';

/** Whether leftover soap, spare pieces or bars can carry what is followed on to the next batch. */
export type Carries = (item: Item) => boolean;

const everything: Carries = () => true;

/**
 * Everything that carried a lot into a batch: its own uses, then the leftovers, spare pieces and bars
 * of every batch it reached, over any number of batches. All of a batch counts as being in all that
 * it left, since the ledger does not say which melt took which lot; a recall may narrow that by
 * `carries`.
 */
export function reachOfLot(book: Book, lotKey: string, carries: Carries = everything): Leaving[] {
  const found = flowsOf(book).fromLot.get(lotKey) ?? [];
  return follow(book, found, found.map(batchKeyOf), carries);
}

/** The same for all that a batch left. */
export const reachOfBatch = (book: Book, batchKey: string): Leaving[] =>
  follow(book, [], [batchKey], everything);

/** What was found, and all that took from the batches of the queue or from those that they reached. */
function follow(
  book: Book,
  start: readonly Leaving[],
  queue: string[],
  carries: Carries,
): Leaving[] {
  const flows = flowsOf(book);
  const found = new Set(start);
  const reached = new Set<string>();
  for (let batch = queue.pop(); batch !== undefined; batch = queue.pop()) {
    if (batch === '' || reached.has(batch)) continue;
    reached.add(batch);
    for (const leaving of flows.fromBatch.get(batch) ?? []) {
      if (!carries(leaving.item)) continue;
      found.add(leaving);
      queue.push(batchKeyOf(leaving));
    }
  }
  return [...found];
}

/**
 * Everything that went into some batches, and into the batches whose leftovers, spare pieces or bars
 * they took, back to their lots.
 */
export function sourcesOfBatches(book: Book, batchKeys: readonly string[]): Leaving[] {
  const flows = flowsOf(book);
  const found = new Set<Leaving>();
  const seen = new Set<string>();
  const queue = [...batchKeys];
  for (let batch = queue.pop(); batch !== undefined; batch = queue.pop()) {
    if (seen.has(batch)) continue;
    seen.add(batch);
    for (const leaving of flows.intoBatch.get(batch) ?? []) {
      found.add(leaving);
      queue.push(...leaving.makers);
    }
  }
  return [...found];
}

/** Key of the batch that a use went into; "" where the move names none. */
export function batchKeyOf({ move }: Leaving): string {
  return nameKey(move.batch);
}

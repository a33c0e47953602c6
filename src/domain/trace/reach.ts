import type { Book } from '../book/book.ts';
import { nameKey } from '../kernel/names.ts';
import { type Flows, flowsOf, type Leaving } from './flows.ts';

/**
 * Everything that carried a lot into a batch: its own uses, then the leftovers, spare pieces and bars
 * of every batch it reached, over any number of batches. All of a batch counts as being in all that
 * it left, since the ledger does not say which melt took which lot; only packaging, which is never
 * melted, goes on with bars alone.
 */
export function reachOfLot(book: Book, lotKey: string): Leaving[] {
  const flows = flowsOf(book);
  const direct = flows.fromLot.get(lotKey) ?? [];
  const isPackaging = direct.some(({ item }) => isPacking(item));
  const found = new Set(direct);
  const reached = new Set<string>();
  const queue = direct.map(batchKeyOf);
  for (let batch = queue.pop(); batch !== undefined; batch = queue.pop()) {
    if (batch === '' || reached.has(batch)) continue;
    reached.add(batch);
    for (const leaving of flows.fromBatch.get(batch) ?? []) {
      if (isPackaging && leaving.item.kind !== 'bars') continue;
      found.add(leaving);
      queue.push(batchKeyOf(leaving));
    }
  }
  return [...found];
}

/**
 * Everything that went into a batch, and into the batches whose leftovers, spare pieces or bars it
 * took, back to their lots. Packaging of a batch stays with its bars, as in `reachOfLot`.
 */
export function sourcesOfBatch(book: Book, batchKey: string): Leaving[] {
  const flows = flowsOf(book);
  const found = new Set<Leaving>();
  const seen = new Set<string>();
  const queue = [{ batch: batchKey, asSoap: false }];
  for (let at = queue.pop(); at !== undefined; at = queue.pop()) {
    const { batch, asSoap } = at;
    const key = `${String(asSoap)} ${batch}`;
    if (seen.has(key)) continue;
    seen.add(key);
    for (const leaving of intoBatch(flows, batch, asSoap)) {
      found.add(leaving);
      for (const maker of leaving.makers) {
        queue.push({ batch: maker, asSoap: asSoap || leaving.item.kind !== 'bars' });
      }
    }
  }
  return [...found];
}

const intoBatch = (flows: Flows, batch: string, asSoap: boolean): readonly Leaving[] =>
  (flows.intoBatch.get(batch) ?? []).filter(({ item }) => !asSoap || !isPacking(item));

const isPacking = (item: Leaving['item']): boolean =>
  item.kind === 'material' && item.material.kind === 'packaging';

/** Key of the batch that a use went into; "" where the move names none. */
export function batchKeyOf({ move }: Leaving): string {
  return nameKey(move.batch);
}

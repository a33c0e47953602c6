import type { Book, Design } from '../book/book.ts';
import { itemOfBars } from '../book/find.ts';
import { type Day, wholeDay } from '../kernel/day.ts';
import { addTo, type Exact } from '../kernel/exact.ts';
import { nameKey } from '../kernel/names.ts';
import { oncePerKey } from '../kernel/once-per.ts';
import { historyOf } from '../stock/ledger-index.ts';
import { stockAt } from '../stock/valuation.ts';
import { makersBySource } from './flows.ts';

/** The key of bars of which nobody knows the batch: counted in, or below zero what went beyond all there was. */
export const NO_BATCH = '';

/**
 * Bars of a design on the shelf at the end of a day, by `nameKey` of the batch that made them. A sale that
 * names its batch in Lot took of that one, any other the oldest, as stock is picked. Together they are what
 * is on hand.
 */
export function barsByBatch(book: Book, design: Design, asOf: Day): ReadonlyMap<string, Exact> {
  const key = `${String(wholeDay(asOf))} ${nameKey(design.name)}`;
  return kept(book, key, () => shared(book, design, asOf));
}

const kept = oncePerKey<Book, ReadonlyMap<string, Exact>>(5000);

function shared(book: Book, design: Design, asOf: Day): ReadonlyMap<string, Exact> {
  const item = itemOfBars(design);
  const { moves } = historyOf(book, item);
  const makersOf = makersBySource(moves);
  const makerOf = new Map(
    moves
      .filter(({ reason, batch }) => reason === 'made' && batch !== '')
      .map(({ entry, batch }) => [nameKey(entry), nameKey(batch)]),
  );
  const batchOf = (lot: string, entry: string): string => {
    const made = makerOf.get(nameKey(entry));
    if (made !== undefined) return made;
    // What a count found, or came back, belongs to the batch that its Lot names.
    const [only, ...others] = makersOf.get(nameKey(lot)) ?? [];
    if (only !== undefined && others.length === 0) return only;
    return book.batches.has(nameKey(lot)) ? nameKey(lot) : NO_BATCH;
  };
  const { filled, onHand } = stockAt(book, item, asOf);
  const bars = new Map<string, Exact>();
  let unknown = onHand;
  for (const { lot, entry, quantity } of filled) {
    const batch = batchOf(lot, entry);
    if (batch === NO_BATCH) continue;
    addTo(bars, batch, quantity);
    unknown = unknown.minus(quantity);
  }
  if (!unknown.isZero()) bars.set(NO_BATCH, unknown);
  return bars;
}

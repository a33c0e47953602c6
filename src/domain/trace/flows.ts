import type { Book, Item, Move } from '../book/book.ts';
import { addUnder } from '../kernel/add-under.ts';
import { nameKey } from '../kernel/names.ts';
import { oncePer } from '../kernel/once-per.ts';
import type { ItemHistory } from '../stock/item-history.ts';
import { indexOf } from '../stock/ledger-index.ts';
import { live } from '../stock/reversals.ts';
import { type LayerTaking, takingsOf } from './layer-takings.ts';

/** Something taken from stock, and where it had come from. */
export interface Leaving extends LayerTaking {
  readonly item: Item;
  /** Key of the lot it came straight from; undefined for soap and bars, or where nobody knows. */
  readonly lot: string | undefined;
  /** Keys of the batches that made it; empty for a lot, or where nobody knows. */
  readonly makers: readonly string[];
}

/** Everything that went into batches, looked up three ways by `nameKey`. */
export interface Flows {
  /** By the batch it went into. */
  readonly intoBatch: ReadonlyMap<string, readonly Leaving[]>;
  /** By the lot it came straight from. */
  readonly fromLot: ReadonlyMap<string, readonly Leaving[]>;
  /** By a batch that made it: leftovers, spare pieces, bars melted again. */
  readonly fromBatch: ReadonlyMap<string, readonly Leaving[]>;
  /** Used, but neither a lot nor a batch is known that it came from. */
  readonly fromNowhere: readonly Leaving[];
}

/** All flows of a book, worked out once. Moves that were taken back do not count. */
export const flowsOf: (book: Book) => Flows = oncePer((book) => {
  const used = [...indexOf(book).values()]
    .filter(({ moves }) => moves.some(({ reason }) => reason === 'used'))
    .flatMap((history) => leavingsOf(book, history))
    .filter(({ move }) => move.reason === 'used');
  return {
    intoBatch: grouped(used, ({ move }) => (move.batch === '' ? [] : [nameKey(move.batch)])),
    fromLot: grouped(used, ({ lot }) => (lot === undefined ? [] : [lot])),
    fromBatch: grouped(used, ({ makers }) => makers),
    fromNowhere: used.filter(({ lot, makers }) => lot === undefined && makers.length === 0),
  };
});

const leavingsKnown = new WeakMap<ItemHistory, readonly Leaving[]>();

/** Everything that left stock of one item of the book, with where it had come from. */
export function leavingsOf(book: Book, history: ItemHistory): readonly Leaving[] {
  let leavings = leavingsKnown.get(history);
  if (leavings === undefined) {
    leavings = findLeavings(book, history);
    leavingsKnown.set(history, leavings);
  }
  return leavings;
}

function findLeavings(book: Book, history: ItemHistory): Leaving[] {
  const item = history.moves[0]?.item;
  if (item === undefined) return [];
  const makersOf = makersBySource(history.moves);
  const originOf = (from: string): Origin => {
    const source = nameKey(from);
    const makers = new Set(item.kind === 'material' ? [] : (makersOf.get(source) ?? []));
    if (item.kind !== 'material' && book.batches.has(source)) makers.add(source);
    const isLot = makers.size === 0 && lotKeys(book).has(source);
    return { lot: isLot ? source : undefined, makers: [...makers] };
  };
  // Thousands of moves may take from one lot.
  const origins = new Map<string, Origin>();
  return takingsOf(book, item).map(({ move, from, quantity }) => {
    const origin = origins.get(from) ?? originOf(from);
    origins.set(from, origin);
    return { move, from, quantity, item, ...origin };
  });
}

type Origin = Pick<Leaving, 'lot' | 'makers'>;

/** Which batches put soap, pieces or bars on the shelf under each Lot (its own id, as a rule). */
export function makersBySource(moves: readonly Move[]): Map<string, Set<string>> {
  const makers = new Map<string, Set<string>>();
  for (const move of live(moves)) {
    if (move.quantity <= 0 || move.batch === '') continue;
    // What a count found, or a correction put back, was made by another batch than the one named.
    if (move.reason === 'counted' || move.reason === 'reversed') continue;
    const source = nameKey(move.lot === '' ? move.batch : move.lot);
    makers.set(source, (makers.get(source) ?? new Set()).add(nameKey(move.batch)));
  }
  return makers;
}

const lotKeys = oncePer(
  ({ lots }: Book): ReadonlySet<string> => new Set(lots.map(({ lot }) => nameKey(lot))),
);

function grouped(
  leavings: readonly Leaving[],
  keysOf: (leaving: Leaving) => readonly string[],
): Map<string, Leaving[]> {
  const groups = new Map<string, Leaving[]>();
  for (const leaving of leavings) {
    for (const key of keysOf(leaving)) addUnder(groups, key, leaving);
  }
  return groups;
}

import type { Book, Item, Lot, Move } from '../book/book.ts';
import { compareNames, nameKey } from '../kernel/names.ts';
import { live } from './reversals.ts';

/** The lots and live moves of one stock item, each in the order in which they count. */
export interface ItemHistory {
  readonly lots: readonly Lot[];
  /** All moves, for sums. */
  readonly moves: readonly Move[];
}

const nothing: ItemHistory = { lots: [], moves: [] };
const indexes = new WeakMap<Book, ReadonlyMap<string, ItemHistory>>();

/** Everything that happened to one item. The first call for a book sorts its ledger by item once. */
export function historyOf(book: Book, item: Item): ItemHistory {
  return indexOf(book).get(nameKey(item.name)) ?? nothing;
}

/** Every item that has a lot or a move, by `nameKey`. */
export function indexOf(book: Book): ReadonlyMap<string, ItemHistory> {
  let index = indexes.get(book);
  if (index === undefined) {
    index = makeIndex(book);
    indexes.set(book, index);
  }
  return index;
}

function makeIndex(book: Book): Map<string, ItemHistory> {
  const index = new Map<string, { lots: Lot[]; moves: Move[] }>();
  // Names come from the book's own items, so few spellings are met: each is keyed once.
  const slots = new Map<string, { lots: Lot[]; moves: Move[] }>();
  const slot = (name: string) => {
    let found = slots.get(name);
    if (found === undefined) {
      const key = nameKey(name);
      found = index.get(key) ?? { lots: [], moves: [] };
      index.set(key, found);
      slots.set(name, found);
    }
    return found;
  };
  for (const lot of book.lots) slot(lot.material.name).lots.push(lot);
  for (const move of book.moves) slot(move.item.name).moves.push(move);
  for (const { lots } of index.values()) {
    lots.sort((a, b) => a.received - b.received || compareNames(a.lot, b.lot));
  }
  return index;
}

/** The moves of a history up to the end of a day, without those that were taken back by then, in order. */
export function liveMoves(history: ItemHistory, asOf: number): Move[] {
  const until = Math.floor(asOf) + 1;
  return live(history.moves.filter((move) => move.when < until)).sort(
    (a, b) =>
      Math.floor(a.when) - Math.floor(b.when) ||
      // Within a day what comes in counts first, so that a bar made and sold that day has a cost.
      Math.sign(b.quantity) - Math.sign(a.quantity) ||
      a.when - b.when ||
      compareNames(a.entry, b.entry),
  );
}

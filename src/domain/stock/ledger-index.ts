import type { Book, Item, Lot, Move } from '../book/book.ts';
import type { Day } from '../kernel/day.ts';
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

function makeIndex(book: Book): ReadonlyMap<string, ItemHistory> {
  const index = new Map<string, { lots: Lot[]; moves: Move[] }>();
  // Moves of one item share few item objects: each is keyed once.
  const slots = new Map<unknown, { lots: Lot[]; moves: Move[] }>();
  const slot = (thing: { readonly name: string }) => {
    let found = slots.get(thing);
    if (found === undefined) {
      const key = nameKey(thing.name);
      found = index.get(key) ?? { lots: [], moves: [] };
      index.set(key, found);
      slots.set(thing, found);
    }
    return found;
  };
  for (const lot of book.lots) slot(lot.material).lots.push(lot);
  for (const move of book.ledger.moves) slot(move.item).moves.push(move);
  for (const { lots } of index.values()) {
    lots.sort((a, b) => a.received - b.received || compareNames(a.lot, b.lot));
  }
  return index;
}

/** What a history keeps once worked out: most questions ask of a day after the last reversal. */
interface Prepared {
  /** Live moves of the whole history, in the order in which they count. */
  readonly moves: readonly Move[];
  /** Before this day the cut may part a reversal from what it takes back. */
  readonly settledFrom: Day;
}

const prepared = new WeakMap<ItemHistory, Prepared>();

/** The moves of a history up to the end of a day, without those that were taken back by then, in order. */
export function liveMoves(history: ItemHistory, asOf: Day): readonly Move[] {
  const until = Math.floor(asOf) + 1;
  let whole = prepared.get(history);
  if (whole === undefined) {
    whole = prepare(history);
    prepared.set(history, whole);
  }
  const { moves, settledFrom } = whole;
  if (until <= settledFrom)
    return live(history.moves.filter((move) => move.when < until)).sort(byCount);
  const count = firstAt(moves.length, (at) => (moves[at]?.when ?? until) >= until);
  return count === moves.length ? moves : moves.slice(0, count);
}

function prepare({ moves }: ItemHistory): Prepared {
  const kept = live(moves);
  const keptSet = kept.length === moves.length ? undefined : new Set(kept);
  let settledFrom = -Infinity;
  for (const move of moves) {
    if (move.reason === 'reversed' || keptSet?.has(move) === false)
      settledFrom = Math.max(settledFrom, move.when);
  }
  return { moves: kept.sort(byCount), settledFrom };
}

function byCount(a: Move, b: Move): number {
  return (
    Math.floor(a.when) - Math.floor(b.when) ||
    // Within a day what comes in counts first, so that a bar made and sold that day has a cost.
    Math.sign(b.quantity) - Math.sign(a.quantity) ||
    a.when - b.when ||
    compareNames(a.entry, b.entry)
  );
}

/** The first of `length` places for which `isThere` holds; it holds for all after that one too. */
export function firstAt(length: number, isThere: (at: number) => boolean): number {
  let [low, high] = [0, length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (isThere(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}

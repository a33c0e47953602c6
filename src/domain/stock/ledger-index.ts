import type { Book, Item, Lot, Material, Move } from '../book/book.ts';
import type { Ledger } from '../book/ledger.ts';
import { addUnder } from '../kernel/add-under.ts';
import type { Day } from '../kernel/day.ts';
import { compareLots, nameKey } from '../kernel/names.ts';
import { oncePer } from '../kernel/once-per.ts';
import { ItemHistory } from './item-history.ts';
import { noteItem } from './items-asked.ts';

/** Everything that happened to one item. The first call for a book sorts its ledger by item once. */
export function historyOf(book: Book, item: Item): ItemHistory {
  const key = nameKey(item.name);
  noteItem(key);
  return indexOf(book).get(key) ?? new ItemHistory(book.ledger, NO_ROWS, []);
}

const NO_ROWS = new Int32Array(0);

type Index = ReadonlyMap<string, ItemHistory>;

const indexes = new WeakMap<Book, Index>();

/** Every item that has a lot or a move, by `nameKey`. */
export function indexOf(book: Book): Index {
  const index = indexes.get(book) ?? makeIndex(book);
  indexes.set(book, index);
  return index;
}

/**
 * Indexes a book that was read after another. Where nothing else happened to an item, what was worked
 * out of its history before goes on to hold: after an edit only the item it touches is walked again.
 * Answers the items to which something else happened, by `nameKey`; undefined where the books rest on
 * different catalogues.
 */
export function indexAfter(before: Book, book: Book): ReadonlySet<string> | undefined {
  const known = indexes.get(before);
  if (known === undefined || before.lots !== book.lots || before.materials !== book.materials)
    return undefined;
  const index = makeIndex(book, known);
  indexes.set(book, index);
  const keys = [...new Set([...known.keys(), ...index.keys()])];
  return new Set(keys.filter((key) => known.get(key)?.content !== index.get(key)?.content));
}

/** The moves of a history up to the end of a day, without those that were taken back by then, in order. */
export function liveMoves(history: ItemHistory, asOf: Day): readonly Move[] {
  return history.movesOf(history.liveRows(asOf));
}

function makeIndex({ ledger, lots }: Book, known?: Index): Index {
  const rows = rowsByItem(ledger);
  const lotsOf = lotsByItem(lots);
  const keys = new Set([...lotsOf.keys(), ...rows.keys()]);
  return new Map(
    Array.from(keys, (key) => {
      const history = new ItemHistory(ledger, rows.get(key) ?? NO_ROWS, lotsOf.get(key) ?? []);
      const before = known?.get(key);
      if (before?.hasSameMoves(history) === true) history.content = before.content;
      return [key, history];
    }),
  );
}

/** Each material's lots in order of receipt, by `nameKey` of the material. */
const lotsByItem = oncePer((lots: readonly Lot[]): ReadonlyMap<string, readonly Lot[]> => {
  const lotsOf = new Map<Material, Lot[]>();
  for (const lot of lots) addUnder(lotsOf, lot.material, lot);
  const inOrder = (a: Lot, b: Lot): number => a.received - b.received || compareLots(a.lot, b.lot);
  return new Map(
    Array.from(lotsOf, ([{ name }, received]) => [nameKey(name), received.sort(inOrder)]),
  );
});

/** The places of each item's moves in the ledger, by `nameKey`: counted first, then filled in. */
function rowsByItem({ columns: { items } }: Ledger): Map<string, Int32Array> {
  const slots = new Map<string, number>();
  const slotAt = items.values.map(({ name }) => {
    const key = nameKey(name);
    const slot = slots.get(key) ?? slots.size;
    slots.set(key, slot);
    return slot;
  });
  const counts = new Int32Array(slots.size);
  for (const place of items.places) {
    const slot = slotAt[place] as number;
    counts[slot] = (counts[slot] as number) + 1;
  }
  const rows = Array.from(counts, (count) => new Int32Array(count));
  const filled = new Int32Array(slots.size);
  for (let row = 0; row < items.places.length; row += 1) {
    const slot = slotAt[items.places[row] as number] as number;
    const at = filled[slot] as number;
    (rows[slot] as Int32Array)[at] = row;
    filled[slot] = at + 1;
  }
  return new Map(Array.from(slots, ([key, slot]) => [key, rows[slot] as Int32Array]));
}

import type { Book, Item } from '../book/book.ts';
import type { Day } from '../kernel/day.ts';
import { type Exact, sum, zero } from '../kernel/exact.ts';
import { answer, notYet, type Result } from '../kernel/result.ts';
import { copyOf } from '../stock/layer.ts';
import { Shelf } from '../stock/shelf.ts';
import { foundAt, shelfAt, unitCost } from '../stock/valuation.ts';

/** Quantity taken from one lot, with its exact value and the lot's best before, where it has one. */
export interface Taken {
  readonly item: Item;
  readonly lot: string;
  readonly bestBefore: Day | undefined;
  readonly quantity: Exact;
  readonly value: Exact;
}

/** What the ledger lacks of an item. */
export interface Shortage {
  readonly item: Item;
  readonly needed: Exact;
  /** On hand and already there on the day. */
  readonly available: Exact;
  readonly short: Exact;
}

/** The result of asking stock for a quantity of one item. */
export interface Taking {
  readonly picks: readonly Taken[];
  readonly shortage: Shortage | undefined;
  /** What a count must put in first for the need to be met, where the maker says the count is off. */
  readonly counted: Taken | undefined;
}

/**
 * Takes a quantity of one item from its lots: earliest best before, then received, then lot. Only
 * what had come in by the `day` can be taken, and only what no later move has taken since (`latest`).
 */
export function takeStock(
  book: Book,
  item: Item,
  needed: Exact,
  when: { readonly day: Day; readonly latest: Day },
  countIsOff: boolean,
): Result<Taking> {
  const held = shelfAt(book, item, Math.max(when.day, when.latest));
  const shelf = new Shelf();
  shelf.owed = held.owed;
  for (const layer of held.filled) {
    if (Math.floor(layer.came) <= Math.floor(when.day)) shelf.put(copyOf(layer));
  }
  const available = sum(shelf.filled.map((layer) => layer.quantity)).minus(shelf.owed);
  const short = needed.minus(available);
  const isShort = short.gt(0);
  const shortage = isShort ? { item, needed, available, short } : undefined;
  if (isShort && !countIsOff) return answer({ picks: [], shortage, counted: undefined });
  const average = unitCost(book, item, when.latest);
  let counted: Taken | undefined;
  if (isShort) {
    if (!average.ok) return average;
    const { lot, unitValue = average.value } = foundAt(book, item, when.day);
    const bestBefore = undefined;
    counted = { item, lot, bestBefore, quantity: short, value: short.times(unitValue) };
    shelf.put({
      lot,
      came: when.day,
      bestBefore,
      quantity: short,
      unitValue,
      entry: '',
    });
  }
  const picks: Taken[] = [];
  for (const pick of shelf.take(needed, '')) {
    const cost =
      book.settings.valuation === 'Average' && average.ok ? average.value : pick.unitValue;
    if (cost === undefined) {
      return notYet(
        `${item.name} is in stock without a Value in LedgerLines, so what it costs is not known. Fill the Value in.`,
      );
    }
    const { lot, bestBefore, quantity } = pick;
    picks.push({ item, lot, bestBefore, quantity, value: quantity.times(cost) });
  }
  return answer({ picks: mergeByLot(picks), shortage, counted });
}

/** One line for each lot, though a lot may lie on the shelf in several layers. */
function mergeByLot(picks: readonly Taken[]): Taken[] {
  const byLot = new Map<string, Taken>();
  for (const pick of picks) {
    const before = byLot.get(pick.lot);
    byLot.set(pick.lot, {
      ...pick,
      // What a count put in under the lot's name has no date of its own.
      bestBefore: before?.bestBefore ?? pick.bestBefore,
      quantity: pick.quantity.plus(before?.quantity ?? zero),
      value: pick.value.plus(before?.value ?? zero),
    });
  }
  return [...byLot.values()];
}

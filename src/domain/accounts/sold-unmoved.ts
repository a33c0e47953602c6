import type { Book, Item, Sale } from '../book/book.ts';
import { secondsName } from '../book/find.ts';
import { addTo, type Exact, exact, zero } from '../kernel/exact.ts';
import type { Day } from '../kernel/day.ts';
import { nameKey } from '../kernel/names.ts';
import { historyOf, liveMoves } from '../stock/ledger-index.ts';
import { type Days, isWithin } from './days.ts';

/** Bars that Sales has and no line of the ledger takes out of stock, so that nobody knows what they cost. */
export interface SoldUnmoved {
  /** The design's, or that of its seconds. */
  readonly name: string;
  readonly sold: Exact;
  readonly moved: Exact;
}

/** Compares the bars of some days in Sales with those that left the shelf, or a place, as sold. */
export function soldUnmoved(
  book: Book,
  items: readonly Item[],
  days: Days,
): readonly SoldUnmoved[] {
  const sold = new Map<string, Exact>();
  const names = new Map<string, string>();
  for (const sale of book.sales) {
    if (!isWithin(days, sale.soldOn)) continue;
    const name = soldName(sale);
    names.set(nameKey(name), name);
    addTo(sold, nameKey(name), exact(sale.bars));
  }
  if (sold.size === 0) return [];
  const moved = new Map<string, Exact>();
  for (const item of items) {
    if (!('design' in item)) continue;
    const name = item.kind === 'seconds' ? item.name : item.design.name;
    if (!sold.has(nameKey(name))) continue;
    const inDays = soldBy(book, item, days.to).minus(soldBy(book, item, days.from - 1));
    addTo(moved, nameKey(name), inDays);
  }
  return [...sold].flatMap(([key, bars]) => {
    const out = moved.get(key) ?? zero;
    return bars.gt(out) ? [{ name: names.get(key) ?? key, sold: bars, moved: out }] : [];
  });
}

/** What a sale takes from: the bars of its design, or the seconds. */
export const soldName = ({ design, isSecond }: Pick<Sale, 'design' | 'isSecond'>): string =>
  isSecond ? secondsName(design) : design.name;

function soldBy(book: Book, item: Item, day: Day): Exact {
  let bars = zero;
  for (const { reason, quantity } of liveMoves(historyOf(book, item), day))
    if (reason === 'sold') bars = bars.minus(exact(quantity));
  return bars;
}

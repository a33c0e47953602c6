import type { Book, Item, Lot } from '../book/book.ts';
import type { Ledger } from '../book/ledger.ts';
import type { Day } from '../kernel/day.ts';
import { nameKey } from '../kernel/names.ts';
import { oncePer } from '../kernel/once-per.ts';
import { RunningTotal } from './running-total.ts';

/** What an item's lots and moves come to by day. */
export interface DayTotals {
  readonly received: RunningTotal;
  readonly moved: RunningTotal;
  /** Moves `used`, those taken back among them. */
  readonly used: RunningTotal;
  /** Whether any move takes another back. */
  hasReversals: boolean;
}

const newTotals = (lots: number, moves: number): DayTotals => ({
  received: new RunningTotal(lots),
  moved: new RunningTotal(moves),
  used: new RunningTotal(moves),
  hasReversals: false,
});

/** The totals of one item. */
export const dayTotals = (book: Book, item: Item): DayTotals =>
  dayTotalsByItem(book).get(nameKey(item.name)) ?? newTotals(0, 0);

/** The totals of all items by `nameKey`, summed in one go through the ledger when first asked for. */
export const dayTotalsByItem: (book: Book) => ReadonlyMap<string, DayTotals> = oncePer(sumUp);

function sumUp({ ledger, lots }: Book): ReadonlyMap<string, DayTotals> {
  const { items, reasons, whens, quantities } = ledger.columns;
  const byItem = emptyTotals(ledger, lots);
  for (const lot of [...lots].sort((a, b) => a.received - b.received)) {
    const totals = byItem.get(nameKey(lot.material.name));
    totals?.received.add(Math.floor(lot.received), lot.quantity);
  }
  const totalsAt = items.values.map(({ name }) => byItem.get(nameKey(name)) as DayTotals);
  const isUse = reasons.values.map((reason) => reason === 'used');
  const isReversal = reasons.values.map((reason) => reason === 'reversed');
  for (const row of rowsByDay(ledger)) {
    const totals = totalsAt[items.places[row] as number] as DayTotals;
    const reason = reasons.places[row] as number;
    const day = Math.floor(whens[row] as Day);
    const quantity = quantities[row] as number;
    totals.moved.add(day, quantity);
    if (isUse[reason] === true) totals.used.add(day, -quantity);
    else if (isReversal[reason] === true) totals.hasReversals = true;
  }
  return byItem;
}

/** Totals with room for each item's lots and moves. */
function emptyTotals({ columns: { items } }: Ledger, lots: readonly Lot[]): Map<string, DayTotals> {
  const counts = new Map<string, { lots: number; moves: number }>();
  const countsOf = ({ name }: { readonly name: string }) => {
    const found = counts.get(nameKey(name)) ?? { lots: 0, moves: 0 };
    counts.set(nameKey(name), found);
    return found;
  };
  for (const lot of lots) countsOf(lot.material).lots += 1;
  const countsAt = items.values.map(countsOf);
  for (const place of items.places) {
    const found = countsAt[place];
    if (found !== undefined) found.moves += 1;
  }
  return new Map(
    Array.from(counts, ([key, count]) => [key, newTotals(count.lots, count.moves)] as const),
  );
}

/** The rows of the ledger day by day, which is how most ledgers are written. */
function rowsByDay({ columns: { whens } }: Ledger): Int32Array {
  const rows = new Int32Array(whens.length);
  let isInOrder = true;
  for (let row = 0; row < rows.length; row += 1) {
    rows[row] = row;
    if (row > 0 && (whens[row - 1] as Day) > (whens[row] as Day)) isInOrder = false;
  }
  return isInOrder ? rows : rows.sort((a, b) => (whens[a] as Day) - (whens[b] as Day));
}

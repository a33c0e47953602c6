import type { Book, Item, Move } from '../book/book.ts';
import type { MoveReason } from '../book/words.ts';
import type { Day } from '../kernel/day.ts';
import { addTo, type Exact } from '../kernel/exact.ts';
import { oncePer } from '../kernel/once-per.ts';
import { answer, notYet, type Result } from '../kernel/result.ts';
import { type ItemHistory, oncePerContent } from './item-history.ts';
import { itemSums } from './item-sums.ts';
import type { StockLayer } from './layer.ts';
import { type LayersLeft, layersLeft } from './layers-left.ts';
import { historyOf } from './ledger-index.ts';
import { packUnitCost } from './lot-cost.ts';
import { onHand } from './on-hand.ts';
import type { Shelf } from './shelf.ts';
import { Walk, worthOf } from './walk.ts';

/** Stock of one item at the end of a day. */
export interface Stock {
  readonly item: Item;
  readonly onHand: Exact;
  /** Under the Settings' valuation; fails where a move that put stock in has no value. */
  readonly value: Result<Exact>;
  /** Layers with stock in them, in picking order. Not to be changed: take from copies. */
  readonly filled: readonly StockLayer[];
  /** The latest cost that stock came in at. */
  readonly newestUnitCost: Exact | undefined;
}

/** What was worked out for the days and valuations asked for so far. */
const stocks = oncePerContent(() => new Map<string, Stock>());
const walks = oncePerContent(() => new Map<string, Walk>());

/** Worked out once for what happened to an item by the end of a day. */
export function stockAt(book: Book, item: Item, asOf: Day): Stock {
  const history = historyOf(book, item);
  return keptFor(stocks(history), keyOf(book, history, asOf), item, () => {
    const left = isPlain(book, history, asOf) ? layersLeft(history) : undefined;
    return left === undefined ? followed(book, item, asOf) : leftOver(item, history, left);
  });
}

/** The shelf itself, emptied layers and debts with it. Not to be changed: take from a copy. */
export const shelfAt = (book: Book, item: Item, asOf: Day): Shelf => walkTo(book, item, asOf).shelf;

/**
 * Where what a count finds is put: in the lot, or for soap and bars the batch, that came last; "" where
 * none did. And what a unit of it is worth there, undefined where the stock has no cost.
 */
export function foundAt(
  book: Book,
  item: Item,
  asOf: Day,
): { readonly lot: string; readonly unitValue: Exact | undefined } {
  const { newestLot: lot, newestUnitCost } = walkTo(book, item, asOf);
  const keepsLots = item.kind === 'material' && lot !== '' && !isAverage(book);
  if (keepsLots) return { lot, unitValue: newestUnitCost };
  const cost = unitCost(book, item, asOf);
  return { lot, unitValue: cost.ok ? cost.value : undefined };
}

/**
 * What the lines of some reasons changed the worth of an item's stock by, up to the end of a day; without those that
 * were taken back by then.
 */
export function worthByReason(
  book: Book,
  item: Item,
  asOf: Day,
  reasons: readonly MoveReason[],
): ReadonlyMap<MoveReason, Exact> {
  const history = historyOf(book, item);
  const { values, places } = book.ledger.columns.reasons;
  const heard = values.map((reason) => reasons.includes(reason));
  const hears = (row: number): boolean => heard[places[row] as number] === true;
  const worth = new Map<MoveReason, Exact>();
  if (!history.rows.some(hears)) return worth;
  const changed = (row: number, by: Exact): void => {
    addTo(worth, values[places[row] as number] as MoveReason, by);
  };
  new Walk(item, history, asOf, isAverage(book), { hears, changed });
  return worth;
}

/** The lines that put an item in stock by the end of a day though nothing says what it was worth. */
export function unvaluedMoves(book: Book, item: Item, asOf: Day): readonly Move[] {
  const { rows, ledger } = historyOf(book, item);
  const { quantities, values } = ledger.columns;
  const mayBe = rows.some((row) => (quantities[row] as number) > 0 && Number.isNaN(values[row]));
  return mayBe ? walkTo(book, item, asOf).unvalued : [];
}

/** Walks an item's lots and moves up to the end of a day, each day and item once. */
function walkTo(book: Book, item: Item, asOf: Day): Walk {
  const history = historyOf(book, item);
  return keptFor(
    walks(history),
    keyOf(book, history, asOf),
    item,
    () => new Walk(item, history, asOf, isAverage(book)),
  );
}

const isAverage = ({ settings }: Book): boolean => settings.valuation === 'Average';

/** All days from the last on which something happened have one answer. */
const keyOf = ({ settings }: Book, history: ItemHistory, asOf: Day): string =>
  `${Math.min(Math.floor(asOf), itemSums(history).lastDay)} ${settings.valuation}`;

/** Whether all that ever happened counts, and each layer keeps its own cost. */
const isPlain = (book: Book, history: ItemHistory, asOf: Day): boolean =>
  !isAverage(book) && Math.floor(asOf) >= itemSums(history).lastDay;

/** What is known under a key for this very item, else worked out and kept. */
function keptFor<A extends { readonly item: Item }>(
  known: Map<string, A>,
  key: string,
  item: Item,
  work: () => A,
): A {
  const found = known.get(key);
  if (found !== undefined && isSameThing(found.item, item)) return found;
  const answered = work();
  known.set(key, answered);
  return answered;
}

/** An item is made anew for each look-up. */
function isSameThing(a: Item, b: Item): boolean {
  if (a.kind === 'material' && b.kind === 'material') return a.material === b.material;
  return a.kind === b.kind && a.name === b.name;
}

/**
 * What one unit is worth: value ÷ on hand; with none on hand the newest cost it came in at; for a
 * material never bought, pack price ÷ pack size.
 */
export const unitCost = (book: Book, item: Item, asOf: Day): Result<Exact> =>
  unitCostOf(stockAt(book, item, asOf));

const unitCostOf = oncePer((stock: Stock): Result<Exact> => {
  const { item, onHand: quantity, value } = stock;
  if (quantity.gt(0)) return value.ok ? answer(value.value.div(quantity)) : value;
  const cost = stock.newestUnitCost ?? packUnitCost(item);
  return cost === undefined ? noCostYet(item) : answer(cost);
});

const noCostYet = ({ kind, name }: Item): Result<never> =>
  notYet(
    kind === 'material'
      ? `${name} has no cost yet: enter a lot, or its Pack size and Pack price in Materials.`
      : `${name} has no cost yet: none has been made with a Value in LedgerLines.`,
  );

/** Value of stock on hand under the Settings' valuation. */
export const stockValue = (book: Book, item: Item, asOf: Day): Result<Exact> =>
  stockAt(book, item, asOf).value;

function leftOver(item: Item, history: ItemHistory, { filled, newest }: LayersLeft): Stock {
  return {
    item,
    onHand: itemSums(history).onHand,
    value: answer(worthOf(filled)),
    filled,
    // Most have stock, and are never asked for it.
    get newestUnitCost() {
      return newest?.unitValue;
    },
  };
}

function followed(book: Book, item: Item, asOf: Day): Stock {
  const walk = walkTo(book, item, asOf);
  const quantity = onHand(book, item, asOf);
  const { filled } = walk.shelf;
  const { newestUnitCost } = walk;
  return {
    item,
    onHand: quantity,
    value: valueOf(book, walk, filled, quantity),
    filled,
    newestUnitCost,
  };
}

function valueOf(
  book: Book,
  walk: Walk,
  filled: readonly StockLayer[],
  quantity: Exact,
): Result<Exact> {
  const { item } = walk;
  const unknown = isAverage(book)
    ? quantity.isZero()
      ? undefined
      : walk.unvalued[0]?.entry
    : filled.find((layer) => layer.unitValue === undefined)?.entry;
  if (unknown !== undefined) {
    return notYet(
      `Entry ${unknown} in LedgerLines put ${item.name} in stock without a Value. Fill in what it was worth.`,
    );
  }
  const owedAt = walk.newestUnitCost ?? packUnitCost(item);
  if (owedAt === undefined && quantity.isNegative()) return noCostYet(item);
  return answer(walk.worthNow);
}

import type { Book, Item } from '../book/book.ts';
import type { Day } from '../kernel/day.ts';
import { type Exact, sum, zero } from '../kernel/exact.ts';
import { answer, notYet, type Result } from '../kernel/result.ts';
import type { ItemHistory } from './item-history.ts';
import { historyOf } from './ledger-index.ts';
import { packUnitCost } from './lot-cost.ts';
import { onHand } from './on-hand.ts';
import type { Shelf } from './shelf.ts';
import { Walk } from './walk.ts';

/** Stock of one item at the end of a day, after walking its history once in order of time. */
export interface Stock {
  readonly item: Item;
  readonly onHand: Exact;
  /** Under the Settings' valuation; fails where a move that put stock in has no value. */
  readonly value: Result<Exact>;
  /** What is on the shelf, in picking order. Not to be changed: take from a copy. */
  readonly shelf: Shelf;
  /** The latest cost that stock came in at. */
  readonly newestUnitCost: Exact | undefined;
}

const walked = new WeakMap<object, Map<string, Stock>>();

/** Walks an item's lots and moves up to the end of a day. Kept for what happened to it, so each is walked once. */
export function stockAt(book: Book, item: Item, asOf: Day): Stock {
  const history = historyOf(book, item);
  let known = walked.get(history.content);
  if (known === undefined) {
    known = new Map();
    walked.set(history.content, known);
  }
  // All days from the last on which something happened have one answer.
  const day = Math.min(Math.floor(asOf), history.lastDay);
  const key = `${day} ${book.settings.valuation}`;
  const found = known.get(key);
  if (found !== undefined && isSameThing(found.item, item)) return found;
  const stock = walk(book, item, history, asOf);
  known.set(key, stock);
  return stock;
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
export function unitCost(book: Book, item: Item, asOf: Day): Result<Exact> {
  const stock = stockAt(book, item, asOf);
  if (stock.onHand.gt(0))
    return stock.value.ok ? answer(stock.value.value.div(stock.onHand)) : stock.value;
  const cost = stock.newestUnitCost ?? packUnitCost(item);
  if (cost !== undefined) return answer(cost);
  return notYet(
    item.kind === 'material'
      ? `${item.name} has no cost yet: enter a lot, or its Pack size and Pack price in Materials.`
      : `${item.name} has no cost yet: none has been made with a Value in Moves.`,
  );
}

/** Value of stock on hand under the Settings' valuation. */
export function stockValue(book: Book, item: Item, asOf: Day): Result<Exact> {
  return stockAt(book, item, asOf).value;
}

function walk(book: Book, item: Item, history: ItemHistory, asOf: Day): Stock {
  const walked = new Walk(item, history, asOf, book.settings.valuation === 'Average');
  const quantity = onHand(book, item, asOf);
  return {
    item,
    onHand: quantity,
    value: valueOf(book, item, walked, quantity),
    shelf: walked.shelf,
    newestUnitCost: walked.newestUnitCost,
  };
}

function valueOf(book: Book, item: Item, walk: Walk, onHand: Exact): Result<Exact> {
  const isAverage = book.settings.valuation === 'Average';
  const unknown = isAverage
    ? onHand.isZero()
      ? undefined
      : walk.unvalued
    : walk.shelf.filled.find((layer) => layer.unitValue === undefined)?.entry;
  if (unknown !== undefined) {
    return notYet(
      `Entry ${unknown} in Moves put ${item.name} in stock without a Value. Fill in what it was worth.`,
    );
  }
  if (walk.pool !== undefined && isAverage) return answer(walk.pool.value);
  const layers = sum(
    walk.shelf.filled.map((layer) => layer.quantity.times(layer.unitValue ?? zero)),
  );
  return answer(
    layers.minus(walk.shelf.owed.times(walk.newestUnitCost ?? packUnitCost(item) ?? zero)),
  );
}

import type { Book, Item, Lot, Move } from '../book/book.ts';
import type { Day } from '../kernel/day.ts';
import { type Exact, exact, sum, zero } from '../kernel/exact.ts';
import { nameKey } from '../kernel/names.ts';
import { answer, notYet, type Result } from '../kernel/result.ts';
import { historyOf, liveMoves } from './ledger-index.ts';
import { landedCost, landedUnitCost, packUnitCost } from './lot-cost.ts';
import { Shelf } from './shelf.ts';

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

const walked = new WeakMap<Book, Map<string, Stock>>();

/** Walks an item's lots and moves up to the end of a day. Kept for the book, so each is walked once. */
export function stockAt(book: Book, item: Item, asOf: Day): Stock {
  let known = walked.get(book);
  if (known === undefined) {
    known = new Map();
    walked.set(book, known);
  }
  const key = `${Math.floor(asOf)} ${nameKey(item.name)}`;
  const found = known.get(key);
  if (found !== undefined) return found;
  const stock = walk(book, item, asOf);
  known.set(key, stock);
  return stock;
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

/** Running state of the walk: layers for FIFO, and one pool for the moving average. */
interface Walk {
  readonly shelf: Shelf;
  quantity: Exact;
  averageValue: Exact;
  newestUnitCost: Exact | undefined;
  /** The first entry that put stock in without a value. */
  unvalued: string | undefined;
}

function walk(book: Book, item: Item, asOf: Day): Stock {
  const history = historyOf(book, item);
  const until = Math.floor(asOf) + 1;
  const lots = history.lots.filter((lot) => lot.received < until);
  const state: Walk = {
    shelf: new Shelf(),
    quantity: zero,
    averageValue: zero,
    newestUnitCost: undefined,
    unvalued: undefined,
  };
  let nextLot = 0;
  for (const move of liveMoves(history, asOf)) {
    for (
      let lot = lots[nextLot];
      lot !== undefined && lot.received < Math.floor(move.when) + 1;
      lot = lots[nextLot]
    ) {
      receive(lot, state);
      nextLot += 1;
    }
    if (move.quantity > 0) putIn(move, state, item);
    else takeOut(move, state);
  }
  for (const lot of lots.slice(nextLot)) receive(lot, state);
  return {
    item,
    onHand: state.quantity,
    value: valueOf(book, item, state),
    shelf: state.shelf,
    newestUnitCost: state.newestUnitCost,
  };
}

function receive(lot: Lot, state: Walk): void {
  const quantity = exact(lot.quantity);
  const unitValue = landedUnitCost(lot);
  state.shelf.put({
    lot: lot.lot,
    came: lot.received,
    bestBefore: lot.bestBefore,
    quantity,
    unitValue,
    entry: lot.lot,
  });
  addToPool(state, quantity, landedCost(lot), unitValue);
  state.newestUnitCost = unitValue;
}

function putIn(move: Move, state: Walk, item: Item): void {
  const quantity = exact(move.quantity);
  const sameLot =
    move.lot === ''
      ? undefined
      : state.shelf.layers.find((layer) => nameKey(layer.lot) === nameKey(move.lot));
  const isMaterialLot = item.kind === 'material' && sameLot !== undefined;
  const unitValue = isMaterialLot
    ? sameLot.unitValue
    : move.value === undefined
      ? (averageCost(state) ?? state.newestUnitCost ?? packUnitCost(item))
      : exact(move.value).abs().div(quantity);
  if (unitValue === undefined) state.unvalued ??= move.entry;
  state.shelf.put({
    lot: move.lot === '' ? madeBy(move, item) : move.lot,
    came: move.when,
    bestBefore: isMaterialLot ? sameLot.bestBefore : undefined,
    quantity,
    unitValue,
    entry: move.entry,
  });
  addToPool(state, quantity, quantity.times(unitValue ?? zero), unitValue ?? zero);
  state.newestUnitCost = unitValue ?? state.newestUnitCost;
}

/** Soap and bars without a Lot are known by the batch that made them; material without one by no lot. */
function madeBy(move: Move, item: Item): string {
  if (item.kind === 'material') return '';
  return move.batch === '' || move.reason === 'counted' ? move.entry : move.batch;
}

function takeOut(move: Move, state: Walk): void {
  const quantity = exact(move.quantity).neg();
  state.shelf.take(quantity, move.lot);
  const average = averageCost(state) ?? state.newestUnitCost ?? zero;
  addToPool(state, quantity.neg(), quantity.neg().times(average), average);
}

function addToPool(state: Walk, quantity: Exact, value: Exact, unitValue: Exact): void {
  const wasOwed = state.quantity.isNegative();
  state.quantity = state.quantity.plus(quantity);
  // An empty shelf is worth nothing, whatever the division before it left over. What was taken before
  // it was there is repaid at the new cost, as on the FIFO shelf: a guess at its cost must not linger.
  state.averageValue = state.quantity.isZero()
    ? zero
    : wasOwed
      ? state.quantity.times(unitValue)
      : state.averageValue.plus(value);
}

function averageCost(state: Walk): Exact | undefined {
  return state.quantity.gt(0) ? state.averageValue.div(state.quantity) : undefined;
}

function valueOf(book: Book, item: Item, state: Walk): Result<Exact> {
  const unknown =
    book.settings.valuation === 'Average'
      ? state.quantity.isZero()
        ? undefined
        : state.unvalued
      : state.shelf.filled.find((layer) => layer.unitValue === undefined)?.entry;
  if (unknown !== undefined) {
    return notYet(
      `Entry ${unknown} in Moves put ${item.name} in stock without a Value. Fill in what it was worth.`,
    );
  }
  if (book.settings.valuation === 'Average') return answer(state.averageValue);
  const layers = sum(
    state.shelf.filled.map((layer) => layer.quantity.times(layer.unitValue ?? zero)),
  );
  return answer(
    layers.minus(state.shelf.owed.times(state.newestUnitCost ?? packUnitCost(item) ?? zero)),
  );
}

import type { Book, Item, Lot, Move } from '../book/book.ts';
import { valueIn } from '../book/ledger.ts';
import type { Day } from '../kernel/day.ts';
import { type Exact, exact, sum, zero } from '../kernel/exact.ts';
import { answer, notYet, type Result } from '../kernel/result.ts';
import type { ItemHistory } from './item-history.ts';
import { historyOf } from './ledger-index.ts';
import { landedCost, landedUnitCost, packUnitCost } from './lot-cost.ts';
import { Pool } from './pool.ts';
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

const walked = new WeakMap<object, Map<string, Stock>>();

/** Walks an item's lots and moves up to the end of a day. Kept for what happened to it, so each is walked once. */
export function stockAt(book: Book, item: Item, asOf: Day): Stock {
  const history = historyOf(book, item);
  let known = walked.get(history.content);
  if (known === undefined) {
    known = new Map();
    walked.set(history.content, known);
  }
  const key = `${Math.floor(asOf)} ${book.settings.valuation}`;
  const found = known.get(key);
  if (found !== undefined && isSameThing(found.item, item)) return found;
  const stock = walk(book, item, history, asOf);
  known.set(key, stock);
  return stock;
}

/** An item is made anew for each look-up, and one without a history shares its empty one with others. */
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

/** Running state of the walk: layers for FIFO, and one pool for the moving average. */
interface Walk {
  readonly shelf: Shelf;
  readonly pool: Pool;
  newestUnitCost: Exact | undefined;
  /** The first entry that put stock in without a value. */
  unvalued: string | undefined;
}

function walk(book: Book, item: Item, history: ItemHistory, asOf: Day): Stock {
  const until = Math.floor(asOf) + 1;
  const { ledger } = history;
  const { whens, quantities, lots: lotNames } = ledger.columns;
  const lots = history.lots.filter((lot) => lot.received < until);
  const state: Walk = {
    shelf: new Shelf(),
    pool: new Pool(),
    newestUnitCost: undefined,
    unvalued: undefined,
  };
  let nextLot = 0;
  // Most moves take something off the shelf, so only of the others an object is made.
  for (const row of history.liveRows(asOf)) {
    const day = Math.floor(whens[row] as Day);
    for (let lot = lots[nextLot]; lot !== undefined && lot.received < day + 1; lot = lots[nextLot]) {
      receive(lot, state);
      nextLot += 1;
    }
    const quantity = quantities[row] as number;
    if (quantity > 0) putIn(ledger.move(row), state, item);
    else takeOut(-quantity, valueIn(lotNames, row), state);
  }
  for (const lot of lots.slice(nextLot)) receive(lot, state);
  return {
    item,
    onHand: state.pool.quantity,
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
  state.pool.putIn(lot.quantity, landedCost(lot), unitValue);
  state.newestUnitCost = unitValue;
}

function putIn(move: Move, state: Walk, item: Item): void {
  const quantity = exact(move.quantity);
  const sameLot = state.shelf.named(move.lot)[0];
  const isMaterialLot = item.kind === 'material' && sameLot !== undefined;
  const unitValue = isMaterialLot
    ? sameLot.unitValue
    : move.value === undefined
      ? (state.pool.unitCost ?? state.newestUnitCost ?? packUnitCost(item))
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
  state.pool.putIn(move.quantity, quantity.times(unitValue ?? zero), unitValue ?? zero);
  state.newestUnitCost = unitValue ?? state.newestUnitCost;
}

/** Soap and bars without a Lot are known by the batch that made them; material without one by no lot. */
function madeBy(move: Move, item: Item): string {
  if (item.kind === 'material') return '';
  return move.batch === '' || move.reason === 'counted' ? move.entry : move.batch;
}

function takeOut(quantity: number, lot: string, state: Walk): void {
  state.shelf.takeOff(quantity, lot);
  state.pool.takeOut(quantity, state.newestUnitCost ?? zero);
}

function valueOf(book: Book, item: Item, state: Walk): Result<Exact> {
  const unknown =
    book.settings.valuation === 'Average'
      ? state.pool.quantity.isZero()
        ? undefined
        : state.unvalued
      : state.shelf.filled.find((layer) => layer.unitValue === undefined)?.entry;
  if (unknown !== undefined) {
    return notYet(
      `Entry ${unknown} in Moves put ${item.name} in stock without a Value. Fill in what it was worth.`,
    );
  }
  if (book.settings.valuation === 'Average') return answer(state.pool.value);
  const layers = sum(
    state.shelf.filled.map((layer) => layer.quantity.times(layer.unitValue ?? zero)),
  );
  return answer(
    layers.minus(state.shelf.owed.times(state.newestUnitCost ?? packUnitCost(item) ?? zero)),
  );
}

import type { Item } from '../src/domain/book/book.ts';
import { findItem } from '../src/domain/book/find.ts';
import { isoDate } from '../src/domain/kernel/day.ts';
import { answer, type Result, andThen } from '../src/domain/kernel/result.ts';
import { type Exact, toCell } from '../src/domain/kernel/exact.ts';
import { onHand as quantityOnHand } from '../src/domain/stock/on-hand.ts';
import { stockList as listStock } from '../src/domain/reorder/stock-list.ts';
import {
  stockValue as valueOfStock,
  unitCost as costOfUnit,
} from '../src/domain/stock/valuation.ts';
import type { Book } from '../src/domain/book/book.ts';
import { settleNumber } from './answer.ts';
import { dayArgument, nameArgument } from './arguments.ts';
import { bookArgument } from './books.ts';

/**
 * How much of an item is on hand: a material, a colour's leftover, spare tiles or a design's bars.
 * @customfunction ONHAND
 * @param {any} item Its name, such as Teal leftover or Teal × Small tiles.
 * @param {any} book The cell named Book.
 * @param {any} [asOf] At the end of this day; today if blank.
 * @returns {number} In the item's stock unit.
 */
export function onHand(item: any, book: any, asOf?: any): number {
  return ofItem(item, book, asOf, (pourBook, found, day) =>
    answer(quantityOnHand(pourBook, found, day)),
  );
}

/**
 * What the stock of an item is worth under the Valuation in Settings.
 * @customfunction STOCKVALUE
 * @param {any} item Its name.
 * @param {any} book The cell named Book.
 * @param {any} [asOf] At the end of this day; today if blank.
 * @returns {number} Money.
 */
export function stockValue(item: any, book: any, asOf?: any): number {
  return ofItem(item, book, asOf, valueOfStock);
}

/**
 * What one unit of an item costs: its value over what is on hand, else the newest lot, else the pack price.
 * @customfunction UNITCOST
 * @param {any} item Its name.
 * @param {any} book The cell named Book.
 * @param {any} [asOf] At the end of this day; today if blank.
 * @returns {number} Money for one stock unit.
 */
export function unitCost(item: any, book: any, asOf?: any): number {
  return ofItem(item, book, asOf, costOfUnit);
}

/**
 * Everything on the shelf, with its value, reorder point and packs to order now.
 * @customfunction STOCKLIST
 * @param {any} book The cell named Book.
 * @param {any} [asOf] At the end of this day; today if blank.
 * @returns {any[][]} Item, Kind, On hand, Unit, Value, Reorder point, Order packs, Earliest best before.
 */
export function stockList(book: any, asOf?: any): any[][] {
  const rows = listStock(bookArgument(book), dayArgument(asOf, 'as of')).map((line) => [
    line.item.name,
    line.kind,
    toCell(line.onHand),
    line.item.unit,
    orBlank(line.value),
    line.reorderPoint === undefined ? '' : orBlank(line.reorderPoint),
    line.packs === undefined ? '' : orBlank(line.packs),
    line.bestBefore === undefined ? '' : isoDate(line.bestBefore),
  ]);
  return [
    [
      'Item',
      'Kind',
      'On hand',
      'Unit',
      'Value',
      'Reorder point',
      'Order packs',
      'Earliest best before',
    ],
    ...rows,
  ];
}

/** In a list, what can't be answered yet stays blank; the single function says why. */
const orBlank = (result: Result<Exact>): number | string => (result.ok ? toCell(result.value) : '');

function ofItem(
  item: unknown,
  book: unknown,
  asOf: unknown,
  ask: (book: Book, item: Item, asOf: number) => Result<Exact>,
): number {
  const pourBook = bookArgument(book);
  const day = dayArgument(asOf, 'as of');
  return settleNumber(
    andThen(findItem(pourBook, nameArgument(item, 'item')), (found) => ask(pourBook, found, day)),
  );
}

import type { Book, Item } from '../book/book.ts';
import { itemOfBars, itemOfMaterial } from '../book/find.ts';
import type { MoveReason } from '../book/words.ts';
import type { Day } from '../kernel/day.ts';
import { addTo, type Exact, sum, zero } from '../kernel/exact.ts';
import { compareNames, nameKey } from '../kernel/names.ts';
import { all, andThen, answer, notYet, type Result } from '../kernel/result.ts';
import { roundMoney } from '../money/currency.ts';
import { indexOf } from '../stock/ledger-index.ts';
import { landedCost } from '../stock/lot-cost.ts';
import { stockValue, unvaluedMoves, worthByReason } from '../stock/valuation.ts';
import { type Days, isWithin } from './days.ts';

/** What came of the stock in some days, in whole smallest units of the currency. */
export interface StockAccount {
  /** Worth of all stock at the end of the day before, materials, soap and bars, wherever they lie. */
  readonly opening: Exact;
  /** What lots received then cost, freight included. */
  readonly purchases: Exact;
  readonly closing: Exact;
  /** What is gone and was not given, wasted or counted away. */
  readonly costOfGoods: Exact;
  readonly given: Exact;
  readonly wasted: Exact;
  /** What counts found missing, less what they found more. */
  readonly countDifferences: Exact;
}

/**
 * Opens and closes the stock of some days; `items` are all that there are (`everyItem`). Opening + purchases − closing =
 * cost of goods + given + wasted + count differences. Fails, with every name, where anything in it has no cost: it
 * would be counted as nothing.
 */
export function stockAccount(book: Book, items: readonly Item[], days: Days): Result<StockAccount> {
  const unvalued = items.flatMap((item) => unvaluedIn(book, item, days));
  if (unvalued.length > 0) return notYet(withoutCost(unvalued));
  return andThen(worthOfAll(book, items, days.from - 1), (opening) =>
    andThen(worthOfAll(book, items, days.to), (closing) =>
      answer(account(book, items, days, opening, closing)),
    ),
  );
}

const goneReasons = ['given', 'wasted', 'counted'] as const satisfies MoveReason[];

function account(
  book: Book,
  items: readonly Item[],
  days: Days,
  openingWorth: Exact,
  closingWorth: Exact,
): StockAccount {
  const { currency } = book.settings;
  const money = (amount: Exact): Exact => roundMoney(amount, currency);
  const bought = book.lots.filter(({ received }) => isWithin(days, received)).map(landedCost);
  // What was taken back since is gone from one and not from the other, so it is back in these days.
  const before = goneBy(book, items, days.from - 1);
  const after = goneBy(book, items, days.to);
  const gone = (reason: MoveReason): Exact =>
    money((before.get(reason) ?? zero).minus(after.get(reason) ?? zero));
  const [given, wasted, countDifferences] = goneReasons.map(gone) as [Exact, Exact, Exact];
  const [opening, purchases, closing] = [openingWorth, sum(bought), closingWorth].map(money) as [
    Exact,
    Exact,
    Exact,
  ];
  const costOfGoods = opening
    .plus(purchases)
    .minus(closing)
    .minus(sum([given, wasted, countDifferences]));
  return { opening, purchases, closing, costOfGoods, given, wasted, countDifferences };
}

/** By how much the lines of each reason had changed the worth of all stock by the end of a day. */
function goneBy(book: Book, items: readonly Item[], day: Day): ReadonlyMap<MoveReason, Exact> {
  const total = new Map<MoveReason, Exact>();
  for (const item of items)
    for (const [reason, worth] of worthByReason(book, item, day, goneReasons))
      addTo(total, reason, worth);
  return total;
}

function worthOfAll(book: Book, items: readonly Item[], day: Day): Result<Exact> {
  return andThen(all(items.map((item) => stockValue(book, item, day))), (worths) =>
    answer(sum(worths)),
  );
}

/** Lines of those days that put something in stock without a cost. */
const unvaluedIn = (book: Book, item: Item, days: Days): { item: Item; entry: string }[] =>
  unvaluedMoves(book, item, days.to)
    .filter(({ when }) => isWithin(days, when))
    .map(({ entry }) => ({ item, entry }));

function withoutCost(lines: readonly { readonly item: Item; readonly entry: string }[]): string {
  const named = lines.map(({ item, entry }) => `${item.name} (entry ${entry})`);
  return `These have no cost, so the days can't be added up: ${atMostTwenty(named)}. Fill in Value of these lines in LedgerLines.`;
}

const MOST_NAMED = 20;

/** Names in a sentence, as many as a person mends at a sitting. */
export const atMostTwenty = (names: readonly string[]): string =>
  names.length <= MOST_NAMED
    ? names.join(', ')
    : `${names.slice(0, MOST_NAMED).join(', ')} and ${names.length - MOST_NAMED} more`;

/** Every item that stock is kept of, by name. */
export function everyItem(book: Book): Item[] {
  const items = new Map<string, Item>();
  for (const material of book.materials.values())
    items.set(nameKey(material.name), itemOfMaterial(material));
  for (const design of book.designs.values()) items.set(nameKey(design.name), itemOfBars(design));
  for (const [key, { moves }] of indexOf(book))
    for (const { item } of moves.slice(0, 1)) items.set(key, item);
  return [...items.values()].sort((a, b) => compareNames(a.name, b.name));
}

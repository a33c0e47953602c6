import type { Book, Item } from '../book/book.ts';
import { unitCostOrRecipe } from '../cost/recipe-cost.ts';
import type { Day } from '../kernel/day.ts';
import { type Exact, zero } from '../kernel/exact.ts';
import { all, andThen, answer, type Result, wrong } from '../kernel/result.ts';
import { roundMoney } from '../money/currency.ts';
import { onHand } from '../stock/on-hand.ts';
import { foundAt } from '../stock/valuation.ts';
import { stockChanges } from './stock-changes.ts';
import { entryId, type NewMove, type StockChange } from './posting.ts';
import { takeStock } from './take-stock.ts';

/** A count of the shelf at the end of a day. */
export interface Stocktake {
  /** Made once when the form opens and kept through every retry. */
  readonly id: string;
  readonly day: Day;
  readonly counts: readonly { readonly item: Item; readonly counted: Exact }[];
  readonly by: string;
}

/** Where the shelf and the ledger differ. */
export interface CountDifference {
  readonly item: Item;
  readonly onHand: Exact;
  readonly counted: Exact;
  /** counted − on hand. */
  readonly difference: Exact;
  /** Worth of the difference, signed. */
  readonly value: Exact;
}

export interface StocktakePosting {
  readonly differences: readonly CountDifference[];
  readonly moves: readonly NewMove[];
  readonly changes: readonly StockChange[];
}

/**
 * Works out the `counted` moves that bring the ledger to what was counted: what is missing leaves by
 * lot in picking order, what was found joins the newest lot. Items that agree write nothing.
 */
export function postStocktake(book: Book, stocktake: Stocktake): Result<StocktakePosting> {
  const negative = stocktake.counts.find(({ counted }) => !counted.gte(0));
  if (negative !== undefined) {
    return wrong(
      `${negative.item.name} is counted as ${negative.counted.toString()}. Give 0 or more.`,
    );
  }
  const lines = all(
    stocktake.counts.map(({ item, counted }) => differenceOf(book, stocktake.day, item, counted)),
  );
  return andThen(lines, (each) => {
    const moves = each
      .flatMap(({ parts }) => parts)
      .map((part, index): NewMove => ({
        ...part,
        entry: entryId(stocktake.id, index + 1),
        when: stocktake.day,
        reason: 'counted',
        batch: '',
        by: stocktake.by,
        note: 'Stocktake',
      }));
    const differences = each.flatMap(({ difference }) =>
      difference.difference.isZero() ? [] : [difference],
    );
    return answer({ differences, moves, changes: stockChanges(book, moves, stocktake.day) });
  });
}

type Part = Pick<NewMove, 'item' | 'quantity' | 'lot' | 'value'>;

function differenceOf(
  book: Book,
  day: Day,
  item: Item,
  counted: Exact,
): Result<{ readonly difference: CountDifference; readonly parts: readonly Part[] }> {
  const stock = onHand(book, item, day);
  const difference = counted.minus(stock);
  const line = { item, onHand: stock, counted, difference };
  if (difference.isZero()) return answer({ difference: { ...line, value: zero }, parts: [] });
  return andThen(
    difference.gt(0) ? found(book, day, item, difference) : missing(book, day, item, difference),
    (parts) => {
      const value = parts.reduce((total, part) => total.plus(part.value), zero);
      return answer({ difference: { ...line, value }, parts });
    },
  );
}

function found(book: Book, day: Day, item: Item, quantity: Exact): Result<Part[]> {
  const { lot, unitValue } = foundAt(book, item, day);
  const cost = unitValue === undefined ? unitCostOrRecipe(book, item, day) : answer(unitValue);
  return andThen(cost, (each) =>
    answer([
      { item, quantity, lot, value: roundMoney(quantity.times(each), book.settings.currency) },
    ]),
  );
}

function missing(book: Book, day: Day, item: Item, difference: Exact): Result<Part[]> {
  return andThen(
    takeStock(book, item, difference.neg(), { day, latest: day }, false),
    ({ picks, shortage }) => {
      if (shortage !== undefined) {
        return wrong(
          `${item.name} can't be counted down: a later line of the ledger has taken it already. Count as of today.`,
        );
      }
      return answer(
        picks.map(({ quantity, lot, value }) => ({
          item,
          quantity: quantity.neg(),
          lot,
          value: roundMoney(value, book.settings.currency).neg(),
        })),
      );
    },
  );
}

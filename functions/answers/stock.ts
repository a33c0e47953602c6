import type { Book, Item } from '../../src/domain/book/book.ts';
import { findItem } from '../../src/domain/book/find.ts';
import { type Day, isoDate } from '../../src/domain/kernel/day.ts';
import { type Exact, toCell } from '../../src/domain/kernel/exact.ts';
import { andThen, answer, type Result } from '../../src/domain/kernel/result.ts';
import { onHand } from '../../src/domain/stock/on-hand.ts';
import { stockList } from '../../src/domain/reorder/stock-list.ts';
import { stockValue, unitCost } from '../../src/domain/stock/valuation.ts';
import type { AnswersOf, GivenTo } from '../answer.ts';
import type { stockRecords } from '../records/stock.ts';

export const stockAnswers: AnswersOf<typeof stockRecords> = {
  /** In the item's stock unit. */
  ONHAND: ofItem((book, item, day) => answer(onHand(book, item, day))),

  /** Money. */
  STOCKVALUE: ofItem(stockValue),

  /** Money for one stock unit. */
  UNITCOST: ofItem(unitCost),

  STOCKLIST: ({ book, asOf }) =>
    answer(
      stockList(book, asOf).map((line) => [
        line.item.name,
        line.kind,
        toCell(line.onHand),
        line.item.unit,
        orBlank(line.value),
        line.reorderPoint === undefined ? '' : orBlank(line.reorderPoint),
        line.packs === undefined ? '' : orBlank(line.packs),
        line.bestBefore === undefined ? '' : isoDate(line.bestBefore),
      ]),
    ),
};

/** In a list, what can't be answered yet stays blank; the single function says why. */
const orBlank = (result: Result<Exact>): number | string => (result.ok ? toCell(result.value) : '');

function ofItem(ask: (book: Book, item: Item, asOf: Day) => Result<Exact>) {
  return ({ item, book, asOf }: GivenTo<(typeof stockRecords)['ONHAND']>): Result<Exact> =>
    andThen(findItem(book, item), (found) => ask(book, found, asOf));
}

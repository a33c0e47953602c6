import { soldName } from '../accounts/sold-unmoved.ts';
import type { Book, Item } from '../book/book.ts';
import { findFair, itemAtPlace, itemOfBars, itemOfSeconds } from '../book/find.ts';
import type { Day } from '../kernel/day.ts';
import { exact, sum, zero } from '../kernel/exact.ts';
import { nameKey } from '../kernel/names.ts';
import { all, andThen, answer, type Result, wrong } from '../kernel/result.ts';
import { currencyDecimals, roundMoney } from '../money/currency.ts';
import { splitAmount } from '../money/split.ts';
import { stockChanges } from './stock-changes.ts';
import { entryId, type NewMove } from './posting.ts';
import type { NewSale, SalesPosting, SellingDay, SoldLine } from './sale.ts';
import { type Needed, shortOf } from './short-of.ts';
import { outOfSets } from './sets-sold.ts';
import { takeStock } from './take-stock.ts';

/**
 * Works out what recording a selling day writes: a line in Sales for each design and price, and a
 * `sold` move for each batch the bars came from, at their cost; sets take their packaging as `used`. Refused whole
 * where more is sold of a design than is on hand. Writes nothing itself.
 */
export function postSales(book: Book, day: SellingDay, today: Day): Result<SalesPosting> {
  return andThen(outOfSets(book, day.sets ?? []), ({ lines, packaging }) =>
    postLines(book, { ...day, lines: [...day.lines, ...lines] }, packaging, today),
  );
}

function postLines(
  book: Book,
  day: SellingDay,
  packaging: readonly Needed[],
  today: Day,
): Result<SalesPosting> {
  const trouble = troubleWith(book, day, packaging, Math.max(today, day.soldOn));
  if (trouble !== undefined) return wrong(trouble);
  const { currency } = book.settings;
  const takings = day.lines.map((line) => line.priceEach.times(exact(line.bars)));
  const fees = splitAmount(roundMoney(day.fees, currency), takings, currencyDecimals(currency));
  const sales = day.lines.map((line, index): NewSale => ({
    sale: entryId(day.id, index + 1),
    soldOn: day.soldOn,
    design: soldName({ isSecond: false, ...line }),
    bars: line.bars,
    priceEach: line.priceEach,
    fair: day.fair,
    fees: fees[index] ?? zero,
    place: day.place?.name ?? '',
    tender: day.tender ?? '',
    takenBy: day.takenBy ?? '',
  }));
  return andThen(soldMoves(book, day, packaging, today), (moves) =>
    answer({ sales, moves, changes: stockChanges(book, moves, day.soldOn) }),
  );
}

/** One move for each item and batch or lot; a design sold at two prices leaves the shelf once. */
function soldMoves(
  book: Book,
  day: SellingDay,
  packaging: readonly Needed[],
  today: Day,
): Result<NewMove[]> {
  const when = { day: day.soldOn, latest: Math.max(today, day.soldOn) };
  const takings = all(
    [...barsByItem(day), ...packaging].map(({ item, quantity }) =>
      takeStock(book, item, quantity, when, false),
    ),
  );
  return andThen(takings, (taken) =>
    answer(
      taken
        .flatMap(({ picks }) => picks)
        .map((pick, index) => ({
          entry: entryId(day.id, index + 1),
          when: day.soldOn,
          reason: pick.item.kind === 'material' ? ('used' as const) : ('sold' as const),
          item: pick.item,
          quantity: pick.quantity.neg(),
          lot: pick.lot,
          value: roundMoney(pick.value, book.settings.currency).neg(),
          batch: '',
          by: day.by,
          note: day.fair,
        })),
    ),
  );
}

/** What a line takes from: the shelf of its bars or seconds, or the place where they lie on consignment. */
function itemOf({ design, isSecond }: SoldLine, { place }: SellingDay): Item {
  if (isSecond === true) return itemOfSeconds(design);
  return place?.sellsAs === 'on consignment' ? itemAtPlace(design, place) : itemOfBars(design);
}

function barsByItem(day: SellingDay): Needed[] {
  const each = day.lines.map((line) => ({ item: itemOf(line, day), bars: exact(line.bars) }));
  const items = [...new Map(each.map(({ item }) => [item.name, item])).values()];
  return items.map((item) => ({
    item,
    quantity: sum(each.filter((line) => line.item.name === item.name).map(({ bars }) => bars)),
  }));
}

function troubleWith(
  book: Book,
  day: SellingDay,
  packaging: readonly Needed[],
  latest: Day,
): string | undefined {
  const taken = book.sales.find(({ sale }) => nameKey(sale).startsWith(`${nameKey(day.id)}.`));
  if (taken !== undefined)
    return `These sales are in Sales already (${taken.sale}), so they are not recorded again.`;
  if (day.lines.length === 0) return 'Nothing was sold: give at least one design with its bars.';
  const fair = day.fair === '' ? undefined : findFair(book.fairs, day.fair);
  if (fair?.ok === false) return fair.failure.sentence;
  if (day.fees.lt(0)) return `Fees is ${day.fees.toString()}. Give 0 or more.`;
  for (const { design, bars, priceEach } of day.lines) {
    if (!Number.isInteger(bars) || bars < 1)
      return `Bars of ${design.name} is ${bars}. Give a whole number, 1 or more.`;
    if (priceEach.lt(0))
      return `Price of ${design.name} is ${priceEach.toString()}. Give 0 or more.`;
  }
  return shortOf(book, [...barsByItem(day), ...packaging], { day: day.soldOn, latest });
}

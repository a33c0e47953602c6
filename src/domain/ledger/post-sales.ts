import type { Book } from '../book/book.ts';
import { findFair, itemOfBars } from '../book/find.ts';
import { count } from '../kernel/count.ts';
import type { Day } from '../kernel/day.ts';
import { Exact, exact, sum, zero } from '../kernel/exact.ts';
import { nameKey } from '../kernel/names.ts';
import { all, andThen, answer, type Result, wrong } from '../kernel/result.ts';
import { currencyDecimals, roundMoney } from '../money/currency.ts';
import { splitAmount } from '../money/split.ts';
import { onHand } from '../stock/on-hand.ts';
import { stockChanges } from './stock-changes.ts';
import { entryId, type NewMove } from './posting.ts';
import type { NewSale, SalesPosting, SellingDay, SoldLine } from './sale.ts';
import { takeStock } from './take-stock.ts';

/**
 * Works out what recording a selling day writes: a line in Sales for each design and price, and a
 * `sold` move for each batch the bars came from, at their cost. Refused whole where more is sold of a
 * design than is on hand. Writes nothing itself.
 */
export function postSales(book: Book, day: SellingDay, today: Day): Result<SalesPosting> {
  const trouble = troubleWith(book, day, Math.max(today, day.soldOn));
  if (trouble !== undefined) return wrong(trouble);
  const { currency } = book.settings;
  const takings = day.lines.map((line) => line.priceEach.times(exact(line.bars)));
  const fees = splitAmount(roundMoney(day.fees, currency), takings, currencyDecimals(currency));
  const sales = day.lines.map((line, index): NewSale => ({
    sale: entryId(day.id, index + 1),
    soldOn: day.soldOn,
    design: line.design.name,
    bars: line.bars,
    priceEach: line.priceEach,
    fair: day.fair,
    fees: fees[index] ?? zero,
  }));
  return andThen(soldMoves(book, day, today), (moves) =>
    answer({ sales, moves, changes: stockChanges(book, moves, day.soldOn) }),
  );
}

/** One move for each design and batch; a design sold at two prices leaves the shelf once. */
function soldMoves(book: Book, day: SellingDay, today: Day): Result<NewMove[]> {
  const takings = all(
    barsByDesign(day.lines).map(({ design, bars }) =>
      takeStock(
        book,
        itemOfBars(design),
        bars,
        { day: day.soldOn, latest: Math.max(today, day.soldOn) },
        false,
      ),
    ),
  );
  return andThen(takings, (taken) =>
    answer(
      taken
        .flatMap(({ picks }) => picks)
        .map((pick, index) => ({
          entry: entryId(day.id, index + 1),
          when: day.soldOn,
          reason: 'sold' as const,
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

function barsByDesign(
  lines: readonly SoldLine[],
): { readonly design: SoldLine['design']; readonly bars: Exact }[] {
  const designs = [...new Set(lines.map(({ design }) => design))];
  return designs.map((design) => ({
    design,
    bars: sum(lines.filter((line) => line.design === design).map((line) => exact(line.bars))),
  }));
}

function troubleWith(book: Book, day: SellingDay, latest: Day): string | undefined {
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
  for (const { design, bars } of barsByDesign(day.lines)) {
    // Both then and now, so that neither that day's nor today's shelf falls below zero.
    const stock = Exact.min(
      onHand(book, itemOfBars(design), day.soldOn),
      onHand(book, itemOfBars(design), latest),
    );
    if (bars.gt(stock)) {
      return `${count(bars, 'bar')} of ${design.name} ${bars.eq(1) ? 'is' : 'are'} more than the ${stock.toString()} in stock. Record the pour first, or mend the count.`;
    }
  }
  return undefined;
}

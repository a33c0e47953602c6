import type { Book, Sale } from '../book/book.ts';
import type { Day } from '../kernel/day.ts';
import { type Exact, exact, sum } from '../kernel/exact.ts';
import { andThen, answer, notYet, type Result } from '../kernel/result.ts';
import { roundMoney } from '../money/currency.ts';
import { commissionOn, feesOn, postageOn } from '../sell/sale-fees.ts';
import { paidFor } from '../sell/sales-tax.ts';
import { type Days, daysOf, isWithin } from './days.ts';
import { soldUnmoved } from './sold-unmoved.ts';
import { everyItem, atMostTwenty, stockAccount, type StockAccount } from './stock-account.ts';

/** What some days brought home, in the Settings' currency. */
export interface Period extends SalesAccount, StockAccount {
  /** Of the fairs that open in those days. */
  readonly stallAndTravel: Exact;
  /** Net sales less the cost of the goods. */
  readonly grossProfit: Exact;
  /** Gross profit less what was given, wasted and missing, stalls and travel. */
  readonly profit: Exact;
}

/** The lines of Sales of some days. */
export interface SalesAccount {
  /** All that buyers paid, tax included. */
  readonly takings: Exact;
  readonly tax: Exact;
  readonly commission: Exact;
  readonly fees: Exact;
  readonly postage: Exact;
  /** Takings less tax, commission, fees and postage. */
  readonly netSales: Exact;
}

/**
 * Adds up the days from one to another, both included (contract §5, PERIOD). Fails where anything sold or in stock has
 * no cost, and names it.
 */
export function period(book: Book, from: Day, to: Day): Result<Period> {
  return andThen(daysOf(from, to), (days) => {
    const items = everyItem(book);
    const unmoved = soldUnmoved(book, items, days);
    if (unmoved.length > 0) {
      const named = unmoved.map(
        ({ name, sold, moved }) =>
          `${name} (${sold.toString()} sold, ${moved.toString()} out of stock)`,
      );
      return notYet(
        `Sales has bars that no "sold" line in LedgerLines takes out of stock, so what they cost isn't known: ${atMostTwenty(named)}. Add those lines, or record the sales in the pane.`,
      );
    }
    return andThen(stockAccount(book, items, days), (stock) => answer(inAll(book, days, stock)));
  });
}

function inAll(book: Book, days: Days, stock: StockAccount): Period {
  const sales = salesAccount(
    book,
    book.sales.filter(({ soldOn }) => isWithin(days, soldOn)),
  );
  const stallAndTravel = roundMoney(
    sum(
      [...book.fairs.values()]
        .filter(({ opens }) => isWithin(days, opens))
        .flatMap(({ stallFee, travel, otherCost }) => [stallFee, travel, otherCost].map(exact)),
    ),
    book.settings.currency,
  );
  const grossProfit = sales.netSales.minus(stock.costOfGoods);
  const { given, wasted, countDifferences } = stock;
  const profit = grossProfit.minus(sum([given, wasted, countDifferences, stallAndTravel]));
  return { ...sales, ...stock, stallAndTravel, grossProfit, profit };
}

/** Adds up lines of Sales, each with its own tax, commission, fees and postage. */
export function salesAccount(book: Book, sales: readonly Sale[]): SalesAccount {
  const taxed = sales.map((sale) => paidFor(book.settings, sale));
  const inMoney = (amounts: readonly Exact[]): Exact =>
    roundMoney(sum(amounts), book.settings.currency);
  const takings = inMoney(taxed.map(({ paid }) => paid));
  const tax = inMoney(taxed.map((line) => line.tax));
  const commission = inMoney(sales.map((sale) => commissionOn(book, sale)));
  const fees = inMoney(sales.map((sale) => feesOn(book, sale)));
  const postage = inMoney(sales.map(postageOn));
  const netSales = takings.minus(sum([tax, commission, fees, postage]));
  return { takings, tax, commission, fees, postage, netSales };
}

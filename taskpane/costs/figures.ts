import type { Book, Design, Fair } from '../../src/domain/book/book.ts';
import { barCost } from '../../src/domain/cost/bar-cost.ts';
import type { Day } from '../../src/domain/kernel/day.ts';
import { type Exact, exact, hundred, sum } from '../../src/domain/kernel/exact.ts';
import { nameKey } from '../../src/domain/kernel/names.ts';
import { oncePerKey } from '../../src/domain/kernel/once-per.ts';
import { all, andThen, answer, type Result } from '../../src/domain/kernel/result.ts';
import { breakEven } from '../../src/domain/sell/price.ts';
import { taxInside, taxOnTop } from '../../src/domain/sell/sales-tax.ts';

/** The largest batch that the pictures look at. */
export const LARGEST_BATCH = 36;

const kept = oncePerKey<Book, Result<Exact[]>>();

/** The full cost of a bar in batches of 1, 2, … LARGEST_BATCH; worked out once for a book. */
export function costBySize(book: Book, design: Design, asOf: Day): Result<Exact[]> {
  const sizes = Array.from({ length: LARGEST_BATCH }, (_, index) => index + 1);
  return kept(book, `${String(Math.floor(asOf))} ${nameKey(design.name)}`, () =>
    all(
      sizes.map((bars) =>
        andThen(barCost(book, design, bars, asOf), ({ perBar }) => answer(perBar)),
      ),
    ),
  );
}

/** Bars that pay for a fair at one price. */
export interface EvenPoint {
  readonly price: Exact;
  /** Undefined where a bar brings in no more than it costs. */
  readonly bars: Exact | undefined;
}

/** Prices that the picture looks at. */
const PRICES = 16;

/**
 * Bars to break even for prices from the bar's cost up to three times of it, in even steps. What a bar
 * brings in is its price without tax and card fees.
 */
export function evenByPrice(book: Book, cost: Exact, fair: Fair): EvenPoint[] {
  return Array.from({ length: PRICES }, (_, index) =>
    evenAt(book, cost, fair, cost.times(exact(1 + (2 * index) / (PRICES - 1))).toDecimalPlaces(2)),
  );
}

/** Bars to break even at a price. */
export function evenAt(book: Book, cost: Exact, fair: Fair, price: Exact): EvenPoint {
  const fixed = sum([fair.stallFee, fair.travel, fair.otherCost].map(exact));
  const left = broughtIn(book, price);
  const even = left.lte(0) ? undefined : breakEven(fixed, left, cost);
  return { price, bars: even?.ok === true ? even.value : undefined };
}

function broughtIn(book: Book, price: Exact): Exact {
  const { currency, pricesIncludeTax, salesTaxPercent, cardFeePercent, cardFeeFixed } =
    book.settings;
  const { paid, net } = pricesIncludeTax
    ? taxInside(price, salesTaxPercent, currency)
    : taxOnTop(price, salesTaxPercent, currency);
  return net.minus(paid.times(cardFeePercent).div(hundred)).minus(cardFeeFixed);
}

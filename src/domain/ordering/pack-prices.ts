import type { Material } from '../book/book.ts';
import { type Exact, exact } from '../kernel/exact.ts';

/** Money inside the search for the cheapest orders: whole millionths of the currency, which add up exactly. */
export type Millionths = number;

const MILLION = 1e6;
export const inMillionths = (amount: Exact): Millionths => amount.times(MILLION).round().toNumber();
export const inMoney = (amount: Millionths): Exact => exact(amount).div(MILLION);

/** What packs of one material cost, in orders of any size. */
export interface PackPrices {
  /** The fewest packs that are sold. */
  readonly least: number;
  /** Numbers from which another price holds, ascending. */
  readonly steps: readonly number[];
  /** What each pack costs in an order of so many; undefined where no price is known. */
  readonly at: (packs: number) => Millionths | undefined;
}

/** The price of the highest step that an order reaches holds for all of its packs; below the steps Pack price. */
export function packPricesOf({ packPrice, priceBreaks, leastPacks }: Material): PackPrices {
  const usual = packPrice && inMillionths(packPrice);
  const steps = priceBreaks.map(({ fromPacks, packPrice: price }) => ({
    fromPacks,
    price: inMillionths(price),
  }));
  return {
    least: Math.max(1, leastPacks?.toNumber() ?? 1),
    steps: steps.map(({ fromPacks }) => fromPacks),
    at: (packs) => steps.findLast(({ fromPacks }) => packs >= fromPacks)?.price ?? usual,
  };
}

/** What so many packs in one order cost; nothing where no price is known. */
export const costOfPacks = (prices: PackPrices, packs: number): Millionths =>
  packs * (prices.at(packs) ?? 0);

/** The cheapest number of packs that is enough: sometimes more than are needed, for the price of the larger order. */
export function cheapestPacks(prices: PackPrices, needed: number): number {
  const enough = Math.max(needed, prices.least);
  return prices.steps
    .filter((step) => step > enough)
    .reduce(
      (best, step) => (costOfPacks(prices, step) < costOfPacks(prices, best) ? step : best),
      enough,
    );
}

import type { Book, Sale } from '../book/book.ts';
import { type Exact, exact, hundred } from '../kernel/exact.ts';
import { roundMoney } from '../money/currency.ts';

/** An amount paid, parted into tax and the rest. */
export interface Taxed {
  /** What the buyer paid. */
  readonly paid: Exact;
  readonly tax: Exact;
  /** paid − tax, so the two always add up. */
  readonly net: Exact;
}

/**
 * Takes the tax out of a price that includes it: the tax fraction r ÷ (1 + r) of the whole (the VAT
 * fraction, UK VATA 1994 s.19), rounded to the currency's smallest unit; the rest is net.
 */
export function taxInside(paid: Exact, taxPercent: Exact, currency: string): Taxed {
  const tax = roundMoney(paid.times(taxPercent).div(hundred.plus(taxPercent)), currency);
  return { paid, tax, net: paid.minus(tax) };
}

/** Puts the tax on top of a price without it. */
export function taxOnTop(net: Exact, taxPercent: Exact, currency: string): Taxed {
  const tax = roundMoney(net.times(taxPercent).div(hundred), currency);
  return { paid: net.plus(tax), tax, net };
}

/** The tax on a sale in percent: that of its place, or of the Settings where the place has none of its own. */
export const taxRateOf = ({ salesTaxPercent }: Book['settings'], { place }: Sale): Exact =>
  place?.taxPercent ?? salesTaxPercent;

/** What the buyer paid for a sale, parted as the Settings say of prices and tax. */
export function paidFor(settings: Book['settings'], sale: Sale): Taxed {
  const { currency, pricesIncludeTax } = settings;
  const price = exact(sale.priceEach).times(exact(sale.bars));
  return (pricesIncludeTax ? taxInside : taxOnTop)(price, taxRateOf(settings, sale), currency);
}

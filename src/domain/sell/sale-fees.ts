import type { Book, Sale } from '../book/book.ts';
import { type Exact, exact, hundred, zero } from '../kernel/exact.ts';
import { roundMoney } from '../money/currency.ts';
import { paidFor } from './sales-tax.ts';

/**
 * The fees on a sale, in the Settings' currency: as its line says; where that is blank by Settings if it
 * was paid by card, else 0. What takes a sale back takes its fees back.
 */
export function feesOn({ settings }: Book, sale: Sale): Exact {
  if (sale.fees !== undefined) return exact(sale.fees);
  if (sale.tender !== 'card') return zero;
  const { cardFeePercent, cardFeeFixed, currency } = settings;
  const share = paidFor(settings, sale).paid.times(cardFeePercent).div(hundred);
  const fixed = sale.bars < 0 ? cardFeeFixed.neg() : cardFeeFixed;
  return roundMoney(share.plus(fixed), currency);
}

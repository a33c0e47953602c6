import type { Book, Sale } from '../book/book.ts';
import { type Exact, exact, hundred, zero } from '../kernel/exact.ts';
import { roundMoney } from '../money/currency.ts';
import { paidFor } from './sales-tax.ts';

/**
 * The fees on a sale, in the Settings' currency: as its line says; where that is blank by its place, else by
 * Settings if it was paid by card, else 0. What takes a sale back takes its fees back.
 */
export function feesOn({ settings }: Book, sale: Sale): Exact {
  if (sale.fees !== undefined) return exact(sale.fees);
  const terms = feeTerms(settings, sale);
  if (terms === undefined) return zero;
  const share = paidFor(settings, sale).paid.times(terms.percent).div(hundred);
  const fixed = sale.bars < 0 ? terms.fixed.neg() : terms.fixed;
  return roundMoney(share.plus(fixed), settings.currency);
}

interface FeeTerms {
  readonly percent: Exact;
  readonly fixed: Exact;
}

function feeTerms(settings: Book['settings'], { place, tender }: Sale): FeeTerms | undefined {
  if (place?.feePercent !== undefined || place?.feeFixed !== undefined)
    return { percent: place.feePercent ?? zero, fixed: place.feeFixed ?? zero };
  if (tender !== 'card') return undefined;
  return { percent: settings.cardFeePercent, fixed: settings.cardFeeFixed };
}

/** What a place keeps of the price paid, rounded for each line. */
export const commissionOn = ({ settings }: Book, sale: Sale): Exact =>
  roundMoney(
    paidFor(settings, sale)
      .paid.times(sale.place?.commissionPercent ?? zero)
      .div(hundred),
    settings.currency,
  );

/** What sending the bars cost. */
export const postageOn = (sale: Sale): Exact =>
  (sale.place?.postageEach ?? zero).times(exact(sale.bars));

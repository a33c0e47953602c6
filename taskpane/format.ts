import { type Day, isoDate } from '../src/domain/kernel/day.ts';
import type { Exact } from '../src/domain/kernel/exact.ts';
import { ledgerDecimals } from '../src/domain/measure/units.ts';
import { currencyDecimals } from '../src/domain/money/currency.ts';

/** A figure as a maker reads it, and the exact one where they differ. */
export interface ShownFigure {
  readonly text: string;
  /** Undefined where the text is exact. */
  readonly exact: string | undefined;
}

/** An amount with its unit: g and ml to a tenth, larger units as near (finer below 1), drops and pieces whole. */
export function amount(quantity: Exact, unit: string): ShownFigure {
  const words = unit === 'each' ? '' : ` ${unit}`;
  const figure = rounded(quantity, unit);
  const text = unit === 'drops' && figure === '1' ? '1 drop' : `${figure}${words}`;
  const exact = `${plain(quantity, unit)}${words}`;
  return { text, exact: text === exact ? undefined : exact };
}

/** The figure alone, as it stands in a field to be changed. */
export function rounded(quantity: Exact, unit: string): string {
  if (unit === 'drops') return signed(quantity.round());
  if (unit === 'each') return plain(quantity, unit);
  // Two digits of a pinch of mica say more than 0.0.
  const isSmall = quantity.abs().lt(1) && !quantity.isZero();
  const decimals = ledgerDecimals(unit);
  if (!isSmall) return signed(quantity.toDecimalPlaces(decimals - 2));
  return signed(quantity.toSignificantDigits(decimals - 1).toDecimalPlaces(decimals));
}

/** The figure as the ledger keeps it, without noise. */
export function plain(quantity: Exact, unit = 'each'): string {
  return signed(quantity.toDecimalPlaces(ledgerDecimals(unit)));
}

/** The figure as the ledger keeps it, with its unit. */
export function ledgerAmount(quantity: Exact, unit: string): string {
  return unit === 'each' ? plain(quantity) : `${plain(quantity, unit)} ${unit}`;
}

/** Money in the workbook's currency. */
export function moneyText(value: Exact, currency: string): string {
  const digits = currencyDecimals(currency);
  return new Intl.NumberFormat('en', {
    style: 'currency',
    currency,
    currencyDisplay: 'narrowSymbol',
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
  })
    .format(value.toDecimalPlaces(digits).toNumber() + 0)
    .replace('-', '−');
}

/** The cost of one unit, to four digits: a gram costs less than a cent. */
export function unitMoney(value: Exact, currency: string, unit: string): string {
  const digits = currencyDecimals(currency);
  const text = new Intl.NumberFormat('en', {
    style: 'currency',
    currency,
    currencyDisplay: 'narrowSymbol',
    minimumFractionDigits: digits,
    maximumFractionDigits: Math.max(digits, 8),
  }).format(value.toSignificantDigits(4).toNumber());
  return `${text} ${unit === 'each' ? 'each' : `a ${unit}`}`;
}

/** A day such as 25 Nov 2026. */
export function day(date: Day): string {
  const [year = '', month = '', dayOfMonth = ''] = isoDate(date).split('-');
  return `${String(Number(dayOfMonth))} ${months[Number(month) - 1] ?? ''} ${year}`;
}

const months = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');

function signed(quantity: Exact): string {
  return quantity.isZero() ? '0' : quantity.toString().replace('-', '−');
}

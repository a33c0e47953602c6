import { type Exact } from '../kernel/exact.ts';

/**
 * Currencies whose minor unit is not a hundredth (ISO 4217, List One). All others count two digits.
 */
const minorDigits: Readonly<Record<string, number>> = {
  BHD: 3,
  BIF: 0,
  CLF: 4,
  CLP: 0,
  DJF: 0,
  GNF: 0,
  IQD: 3,
  ISK: 0,
  JOD: 3,
  JPY: 0,
  KMF: 0,
  KRW: 0,
  KWD: 3,
  LYD: 3,
  OMR: 3,
  PYG: 0,
  RWF: 0,
  TND: 3,
  UGX: 0,
  UYI: 0,
  UYW: 4,
  VND: 0,
  VUV: 0,
  XAF: 0,
  XOF: 0,
  XPF: 0,
};

/** An ISO 4217 code that the machine's own list knows. */
export function isCurrency(code: string): boolean {
  return Intl.supportedValuesOf('currency').includes(code);
}

/** Digits after the point of a currency's smallest unit: 2 for USD, 0 for JPY, 3 for KWD. */
export function currencyDecimals(code: string): number {
  return Object.hasOwn(minorDigits, code) ? (minorDigits[code] ?? 2) : 2;
}

/** Rounds to the currency's smallest unit, halves away from zero. */
export function roundMoney(amount: Exact, currency: string): Exact {
  return amount.toDecimalPlaces(currencyDecimals(currency));
}

import { describe, expect, it } from 'vitest';
import { Exact } from '../../../src/domain/kernel/exact.ts';
import { currencyDecimals, isCurrency, roundMoney } from '../../../src/domain/money/currency.ts';

describe('digits of a currency’s smallest unit', () => {
  // Unicode CLDR 45, supplemental/currencyData.json ("_digits"), where it agrees with ISO 4217: REFERENCES R12.
  it.each([
    ['USD', 2],
    ['EUR', 2],
    ['GBP', 2],
    ['AUD', 2],
    ['CAD', 2],
    ['CHF', 2],
    ['HUF', 2],
    ['JPY', 0],
    ['KRW', 0],
    ['CLP', 0],
    ['VND', 0],
    ['ISK', 0],
    ['KWD', 3],
    ['BHD', 3],
    ['OMR', 3],
    ['JOD', 3],
    ['TND', 3],
    ['CLF', 4],
    ['UYW', 4],
  ] as const)('%s has %d', (code, digits) => {
    expect(currencyDecimals(code)).toBe(digits);
  });

  it.each(['USD', 'JPY', 'KWD'])('%s is a currency', (code) => {
    expect(isCurrency(code)).toBe(true);
  });

  it.each(['usd', 'US$', 'ABC', '', 'constructor'])('%j is none', (code) => {
    expect(isCurrency(code)).toBe(false);
  });
});

describe('rounding money', () => {
  it.each([
    // Halves away from zero, as shops do (common practice); each goes wrong in binary: REFERENCES R6.
    ['0.125', 'USD', '0.13'],
    ['0.135', 'USD', '0.14'],
    ['2.675', 'USD', '2.68'],
    ['1.005', 'USD', '1.01'],
    ['-1.005', 'USD', '-1.01'],
    ['1.00499999999999999', 'USD', '1'],
    ['0.5', 'JPY', '1'],
    ['1234.4999', 'JPY', '1234'],
    ['1.2345', 'KWD', '1.235'],
  ])('%s %s is %s', (amount, currency, rounded) => {
    expect(roundMoney(new Exact(amount), currency).toString()).toBe(rounded);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Exact, exact } from '../../src/domain/kernel/exact.ts';
import { amount, day, ledgerAmount, moneyText } from '../../taskpane/format.ts';
import { readTyped, readWhole } from '../../taskpane/typed-number.ts';

describe('amount', () => {
  it.each([
    ['250', 'g', '250 g', undefined],
    ['83.333333', 'g', '83.3 g', '83.333 g'],
    ['0.146', 'g', '0.15 g', '0.146 g'],
    ['0.04', 'g', '0.04 g', undefined],
    ['5.7333', 'drops', '6 drops', '5.733 drops'],
    ['8', 'drops', '8 drops', undefined],
    ['12', 'each', '12', undefined],
    ['1.8', 'ml', '1.8 ml', undefined],
    ['0', 'g', '0 g', undefined],
    ['-12.05', 'g', '−12.1 g', '−12.05 g'],
  ])('%s %s reads %s', (quantity, unit, text, more) => {
    expect(amount(new Exact(quantity), unit)).toEqual({ text, exact: more });
  });

  it('never shows the noise of binary sums', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1e6, noNaN: true }), (value) => {
        const { text, exact: more } = amount(exact(value), 'g');
        expect(text.length).toBeLessThan(14);
        expect(more ?? '').not.toMatch(/\.\d{4}/u);
      }),
    );
  });
});

describe('money', () => {
  // Minor units: ISO 4217, List One.
  it.each([
    ['-2.4', 'USD', '−$2.40'],
    ['1234.5', 'EUR', '€1,234.50'],
    ['120', 'JPY', '¥120'],
    ['1.2345', 'KWD', 'KWD 1.235'],
    ['-0.001', 'USD', '$0.00'],
  ])('%s %s reads %s', (value, currency, text) => {
    expect(moneyText(new Exact(value), currency).replace('\u00a0', ' ')).toBe(text);
  });
});

describe('days and ledger figures', () => {
  it('reads 25 Nov 2026', () => {
    // Serial 46351: the starter's and Excel's own count of days since 30 Dec 1899.
    expect(day(46351)).toBe('25 Nov 2026');
  });
  it('keeps three decimals of the ledger', () => {
    expect(ledgerAmount(new Exact('-20.8543'), 'g')).toBe('−20.854 g');
  });
});

describe('readTyped', () => {
  it.each([
    ['12', '12'],
    [' 12.5 ', '12.5'],
    ['12,5', '12.5'],
    ['.5', '0.5'],
    ['7.', '7'],
    ['1 200', '1200'],
    ['1,2000', '1.2'],
  ])('takes %s', (typed, value) => {
    const read = readTyped(typed, 'Minutes');
    expect(read.ok && read.value.toString()).toBe(value);
  });

  it.each([
    ['', 'Minutes is blank. Type a number, 0 or more.'],
    ['12x', 'Minutes is "12x". Type a plain number, 0 or more.'],
    ['-3', 'Minutes is "-3". Type a plain number, 0 or more.'],
    ['=1+1', 'Minutes is "=1+1". Type a plain number, 0 or more.'],
    ['.', 'Minutes is ".". Type a plain number, 0 or more.'],
    ['1e9', 'Minutes is "1e9". Type a plain number, 0 or more.'],
    ['1,200', 'Minutes is "1,200". Type 1200 or 1.2: it can be read as either.'],
    ['99999999999', 'Minutes is 99999999999, which is too large.'],
  ])('refuses %s with a sentence', (typed, sentence) => {
    const read = readTyped(typed, 'Minutes');
    expect(!read.ok && read.failure.sentence).toBe(sentence);
  });

  it('is an answer or a sentence for any text', () => {
    fc.assert(
      fc.property(fc.string(), (typed) => {
        const read = readTyped(typed, 'X');
        expect(read.ok ? read.value.gte(0) : read.failure.sentence.startsWith('X is')).toBe(true);
      }),
    );
  });
});

describe('readWhole', () => {
  it.each([
    ['0', 'Good bars is 0. Type a whole number, 1 or more.'],
    ['2.5', 'Good bars is 2.5. Type a whole number, 1 or more.'],
  ])('refuses %s', (typed, sentence) => {
    const read = readWhole(typed, 'Good bars', 1);
    expect(!read.ok && read.failure.sentence).toBe(sentence);
  });
});

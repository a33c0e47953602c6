import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exact, Exact } from '../../../src/domain/kernel/exact.ts';
import type { Liquid } from '../../../src/domain/measure/convert.ts';
import { type AmountOf, readAmount } from '../../../src/domain/measure/typed-amount.ts';
import type { Measure } from '../../../src/domain/measure/units.ts';

const oil = { name: 'Orange oil', unit: 'ml', densityGPerMl: exact(0.84), dropsPerMl: exact(40) };
const unweighed = { ...oil, densityGPerMl: undefined, dropsPerMl: undefined };
const inUnit = (unit: Measure, of?: unknown): AmountOf =>
  of === undefined ? { kind: 'quantity', unit } : { kind: 'quantity', unit, of: of as Liquid };
const usd: AmountOf = { kind: 'money', currency: 'USD' };
const number: AmountOf = { kind: 'number' };
const minutes: AmountOf = { kind: 'time', unit: 'minutes' };
const hours: AmountOf = { kind: 'time', unit: 'hours' };
const days: AmountOf = { kind: 'time', unit: 'days' };

const valueOf = (typed: string, amountOf: AmountOf): string | undefined => {
  const read = readAmount(typed, amountOf);
  return read.ok ? read.value.value.toFixed() : undefined;
};
const shown = (typed: string, amountOf: AmountOf): string | undefined => {
  const read = readAmount(typed, amountOf);
  return read.ok ? read.value.conversion : `refused: ${read.failure.sentence}`;
};

describe('an amount as people type it', () => {
  // 1 lb = 453.59237 g, 1 US fl oz = 29.5735295625 ml: NIST Handbook 44, appendix C.
  it.each<[string, AmountOf, string, string | undefined]>([
    ['10 lb', inUnit('g'), '4535.92', '10 lb = 4,535.92 g'],
    ['1 lb 4 oz', inUnit('g'), '566.99', '1 lb 4 oz = 566.99 g'],
    ['1.2 kg', inUnit('g'), '1200', '1.2 kg = 1200 g'],
    ['1,2 kg', inUnit('g'), '1200', '1,2 kg = 1200 g'],
    ['1 mg', inUnit('g'), '0.001', '1 mg = 0.001 g'],
    ['4 fl oz', inUnit('ml', unweighed), '118.294', '4 fl oz = 118.294 ml'],
    ['4 fl. oz.', inUnit('ml', unweighed), '118.294', '4 fl. oz. = 118.294 ml'],
    ['100 g', inUnit('ml', oil), '119.048', '100 g = 119.048 ml'],
    ['80 drops', inUnit('ml', oil), '2', '80 drops = 2 ml'],
    ['12 g', inUnit('g'), '12', undefined],
    ['12g', inUnit('g'), '12', undefined],
    ['12', inUnit('g'), '12', undefined],
    ['12 pcs', inUnit('each'), '12', '12 pcs = 12 pieces'],
    ['$9', usd, '9', '$9 = 9.00 USD'],
    ['9,50', usd, '9.5', '9,50 = 9.50 USD'],
    ['USD 1,234.50', usd, '1234.5', 'USD 1,234.50 = 1,234.50 USD'],
    ['9,50 €', { kind: 'money', currency: 'EUR' }, '9.5', '9,50 € = 9.50 EUR'],
    ['1.234,5', number, '1234.5', '1.234,5 = 1,234.5'],
    ['1,234,567', number, '1234567', undefined],
    ['1 200', number, '1200', undefined],
    ["1'200.5", number, '1200.5', "1'200.5 = 1,200.5"],
    ['.5', number, '0.5', undefined],
    ['4h', minutes, '240', '4h = 240 min'],
    ['1h30', minutes, '90', '1h30 = 90 min'],
    ['1 h 30 min', minutes, '90', '1 h 30 min = 90 min'],
    ['90 min', hours, '1.5', '90 min = 1.5 hours'],
    ['2 weeks', days, '14', '2 weeks = 14 days'],
  ])('takes %s', (typed, amountOf, value, conversion) => {
    expect(valueOf(typed, amountOf)).toBe(value);
    expect(shown(typed, amountOf)).toBe(conversion);
  });

  it.each<[string, AmountOf, string]>([
    ['1,234', number, 'Type 1234 or 1.234: it can be read as either.'],
    ['1,234 g', inUnit('g'), 'Type 1234 or 1.234: it can be read as either.'],
    ['$1,234', usd, 'Type 1234 or 1.234: it can be read as either.'],
    ['1.234', usd, 'Type 1234 or 1.23: it can be read as either.'],
    ['2.75%', usd, 'Type the amount in USD, not a percent.'],
    ['€9', usd, 'Money is in USD here, as Settings say. Type what it is in USD.'],
    ['9 CHF', usd, 'Money is in USD here, as Settings say. Type what it is in USD.'],
    ['nine', usd, 'Type a plain number, 0 or more.'],
    ['2.75%', number, 'Type a plain number, 0 or more.'],
    ['10 lb', number, 'Type a plain number, 0 or more.'],
    ['10 lb', inUnit('each'), 'Type a plain number, 0 or more.'],
    [
      '4 fl oz',
      inUnit('g', { ...unweighed, unit: 'g' }),
      'Type it in g, or fill in Density g/ml for Orange oil in Materials.',
    ],
    ['4 fl oz', inUnit('g'), 'Type it in g.'],
    [
      '100 g',
      inUnit('ml', unweighed),
      'Type it in ml, or fill in Density g/ml for Orange oil in Materials.',
    ],
    [
      '20 drops',
      inUnit('ml', unweighed),
      'Type it in ml, or fill in Drops per ml for Orange oil in Materials.',
    ],
    ['4 oz', inUnit('ml', oil), 'Type 4 fl oz if it was measured, or its ml.'],
    ['10 stone', inUnit('g'), 'Type a number of g, 0 or more.'],
    ['2 × 500 g', inUnit('g'), 'Type a number of g, 0 or more.'],
    ['-3 g', inUnit('g'), 'Type a number of g, 0 or more.'],
    ['1 2', number, 'Type a plain number, 0 or more.'],
    ['4h', days, 'Type a number of days, 0 or more.'],
    ['2 days', minutes, 'Type a number of minutes, 0 or more.'],
    ['1:30', minutes, 'Type a plain number, 0 or more.'],
  ])('asks back %s', (typed, amountOf, sentence) => {
    expect(shown(typed, amountOf)).toBe(`refused: ${sentence}`);
  });

  const places: readonly AmountOf[] = [
    number,
    usd,
    { kind: 'money', currency: 'JPY' },
    { kind: 'money', currency: 'KWD' },
    minutes,
    hours,
    days,
    inUnit('each'),
    inUnit('g'),
    inUnit('g', { ...oil, unit: 'g' }),
    inUnit('ml', oil),
    inUnit('ml', unweighed),
  ];
  const words = [
    '',
    ' g',
    'kg',
    ' lb',
    'oz',
    ' fl oz',
    ' ml',
    ' drops',
    'h',
    ' min',
    ' weeks',
    ' USD',
  ];
  const figures = fc
    .tuple(fc.nat(9_999_999), fc.nat(4), fc.constantFrom('.', ','), fc.constantFrom(...words))
    .map(([digits, places, sign, word]) => {
      const text = new Exact(digits).div(10 ** places).toFixed(places);
      return text.replace('.', sign) + word;
    });

  it('gives the same when what is shown is typed back', () => {
    fc.assert(
      fc.property(figures, fc.constantFrom(...places), (typed, amountOf) => {
        const read = readAmount(typed, amountOf);
        if (!read.ok || read.value.conversion === undefined) return;
        const back = readAmount(read.value.conversion.split(' = ')[1] ?? '', amountOf);
        expect(back.ok && back.value.value.toFixed(), read.value.conversion).toBe(
          read.value.value.toFixed(),
        );
      }),
      { numRuns: 2000 },
    );
  });

  it('is an amount of 0 or more or a sentence, whatever is typed', () => {
    const any = fc.oneof(fc.string(), fc.string({ unit: 'grapheme' }), figures);
    fc.assert(
      fc.property(any, fc.constantFrom(...places), (typed, amountOf) => {
        const read = readAmount(typed, amountOf);
        expect(read.ok ? read.value.value.gte(0) : read.failure.sentence.endsWith('.')).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });
});

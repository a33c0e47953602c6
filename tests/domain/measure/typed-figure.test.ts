import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readFigure } from '../../../src/domain/measure/typed-figure.ts';

const read = (typed: string): string | readonly string[] | undefined => {
  const figure = readFigure(typed);
  if (figure === undefined) return undefined;
  return 'value' in figure ? figure.value.toFixed() : figure.either.map((each) => each.toFixed());
};

/** Signs between thousands and before decimals as CLDR 45 has them for many countries: point, comma, space, ’ and '. */
describe('a figure as people type it', () => {
  it.each([
    ['12', '12'],
    [' 12.50 ', '12.5'],
    ['9,5', '9.5'],
    ['9,50', '9.5'],
    [',5', '0.5'],
    ['.5', '0.5'],
    ['7.', '7'],
    ['7,', '7'],
    ['1 234,5', '1234.5'],
    ['1\u00a0234\u202f567', '1234567'],
    ['1’234.50', '1234.5'],
    ["1'234", '1234'],
    ['1,234.5', '1234.5'],
    ['1,234,567', '1234567'],
    ['1.234,5', '1234.5'],
    ['1.234.567', '1234567'],
    ['1.234.567,89', '1234567.89'],
    // A point alone before three digits is a decimal point, as in every formula.
    ['1.234', '1.234'],
    ['0,234', '0.234'],
    ['1234,567', '1234.567'],
    ['１２', '12'],
  ])('%j is %s', (typed, value) => {
    expect(read(typed)).toBe(value);
  });

  it('with one comma before three digits may be a thousand or little more than one', () => {
    expect(read('1,234')).toEqual(['1234', '1.234']);
    expect(read('999,000')).toEqual(['999000', '999']);
  });

  it.each([
    '',
    ' ',
    '-1',
    '1e5',
    '1,23,456',
    '1.23.456',
    '12 34',
    '1 2345',
    'ten',
    '1..2',
    '1,2,3',
    '.',
    ',',
  ])('%j is none', (typed) => {
    expect(read(typed)).toBeUndefined();
  });

  it('is what it was written from, in each country’s way', () => {
    const locales = fc.constantFrom('en', 'de', 'fr', 'de-CH');
    fc.assert(
      fc.property(locales, fc.integer({ min: 0, max: 999_999_999 }), (locale, hundredths) => {
        const value = hundredths / 100;
        const typed = value.toLocaleString(locale, { minimumFractionDigits: 2 });
        expect(Number(read(typed))).toBe(value);
      }),
    );
  });
});

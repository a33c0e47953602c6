import { describe, expect, it } from 'vitest';
import { errorOf, loadFunctions } from '../support/worksheet-functions.ts';
import { ranges, workshop } from '../support/small-book.ts';

const call = await loadFunctions();
const book = call('BOOK', ...ranges(workshop));

/**
 * Exact legal values. Definitions in UCUM 2.2 (ucum-essence.xml): 1 lb = 7000 gr of 64.79891 mg,
 * 1 oz = lb/16, 1 US gal = 231 in³ with 1 in = 2.54 cm, 1 qt = gal/4, 1 pt = qt/2, 1 fl oz = gal/128,
 * 1 tbsp = fl oz/2, 1 tsp = tbsp/3, 1 cup = 16 tbsp. NIST Handbook 44, appendix C, tables of section 4,
 * underlines the same figures as exact (from memory; its tables were not at hand). REFERENCES U1, U2, U5, U6,
 * U7, U8.
 */
describe('AMOUNT, legal units', () => {
  it.each([
    ['lb', 'g', 453.59237],
    ['oz', 'g', 28.349523125],
    ['lb', 'oz', 16],
    ['gal', 'ml', 3785.411784],
    ['qt', 'ml', 946.352946],
    ['pt', 'ml', 473.176473],
    ['cup', 'ml', 236.5882365],
    ['fl oz', 'ml', 29.5735295625],
    ['tbsp', 'ml', 14.78676478125],
    ['tsp', 'ml', 4.92892159375],
    ['teaspoons', 'ml', 4.92892159375],
    ['Fluid ounce', 'ml', 29.5735295625],
    ['gal', 'fl oz', 128],
    ['tbsp', 'tsp', 3],
    ['kg', 'g', 1000],
    ['mg', 'g', 0.001],
    ['l', 'ml', 1000],
    ['g', 'lb', 1 / 453.59237],
  ])('1 %s in %s', (from, to, size) => {
    expect(call('AMOUNT', 1, from, to)).toBeCloseTo(size, 12);
  });

  it('does not take an ounce by weight for a fluid ounce', () => {
    expect(errorOf(() => call('AMOUNT', 1, 'oz', 'fl oz')).code).toBe('#VALUE!');
  });
});

describe('AMOUNT, through a material', () => {
  it.each([
    ['ml to g by its density', 10, 'ml', 'g', 'Green drops', 12],
    ['g to ml', 12, 'g', 'ml', 'Green drops', 10],
    ['drops to ml by its drops', 50, 'drops', 'ml', 'Green drops', 2],
    ['drops to g', 25, 'drops', 'g', 'Green drops', 1.2],
    ['g to drops', 1.2, 'g', 'drops', 'Green drops', 25],
    // 20 drops to the ml (REFERENCES U11, S11): USP <1101>, a medicine dropper gives 20 drops of water to 1 ml.
    ['drops where none were counted', 20, 'drops', 'ml', 'Orange oil', 1],
    ['fl oz to g', 1, 'fl oz', 'g', 'Glycerin', 29.5735295625 * 1.25],
    ['its own unit', 7, 'ml', 'ml', 'Orange oil', 7],
    ['drops of what has no density, taken as 1 g/ml', 40, 'drops', 'g', 'Blue mica', 2],
  ])('%s', (_, quantity, from, to, material, amount) => {
    expect(call('AMOUNT', quantity, from, to, material, book)).toBeCloseTo(amount, 12);
  });

  it.each([
    ['a negative amount', -5, 'lb', 'oz', -80],
    ['nothing', 0, 'lb', 'g', 0],
    ['units in any case and spelling', 2, ' Pounds ', 'OZ', 32],
    ['a count', 3, 'each', 'each', 3],
    ['drops of no material in particular, 20 to the ml (contract §2)', 50, 'drops', 'ml', 2.5],
    ['ml in drops of none', 0.5, 'ml', 'drops', 10],
  ])('%s', (_, quantity, from, to, amount) => {
    expect(call('AMOUNT', quantity, from, to)).toBe(amount);
  });

  it.each([
    [
      'an unknown unit',
      [1, 'oz', 'gramms'],
      /"gramms" is not a unit known here. Did you mean "g.*"\?/,
    ],
    [
      'a word of the language itself',
      [1, 'constructor', 'g'],
      /"constructor" is not a unit known here/,
    ],
    ['another one', [1, 'g', '__proto__'], /is not a unit known here/],
    ['weight to volume without a material', [1, 'g', 'ml'], /add its name and the book/],
    ['drops to weight without a material', [1, 'drops', 'g'], /add its name and the book/],
    [
      'weight to volume without a density',
      [1, 'g', 'ml', 'Blue mica', book],
      /Fill in Density g\/ml for Blue mica/,
    ],
    ['a count to weight', [1, 'each', 'g', 'Box', book], /"each" is a count/],
    ['a material without a book', [1, 'g', 'ml', 'Glycerin'], /book is blank/],
    ['an unknown material', [1, 'g', 'ml', 'Glycerine', book], /Did you mean "Glycerin"\?/],
    ['text for a quantity', ['one', 'g', 'oz'], /quantity is "one", which is not a number/],
    ['a blank quantity', ['', 'g', 'oz'], /quantity is blank/],
    ['a blank unit', [1, '', 'oz'], /^from is blank\. Give a unit, such as g, ml or oz\.$/],
    [
      'a unit a thousandth of one that is known',
      [1, 'µl', 'g'],
      /^"µl" is not a unit known here\. Use/,
    ],
    ['an amount past what a cell holds', [1e308, 'kg', 'mg'], /too large for a cell/],
  ])('refuses %s', (_, args, sentence) => {
    const { code, message } = errorOf(() => call('AMOUNT', ...args));
    expect(code).toBe('#VALUE!');
    expect(message).toMatch(sentence);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  compareLots,
  compareNames,
  didYouMean,
  nameKey,
  nearestName,
  quoted,
} from '../../../src/domain/kernel/names.ts';

describe('one name in several spellings', () => {
  it.each([
    ['Teal', ' teal '],
    ['Tide  Pool', 'TIDE POOL'],
    ['Crème', 'Cre\u0300me'],
    ['Small\u00a0tiles', 'small tiles'],
    // Contract §4: NFKC, any case, and nothing that can't be seen.
    ['Ｔｅａｌ', 'teal'],
    ['Te\u00adal', 'Teal'],
    ['Teal\u200b', 'Teal'],
    ['\ufeffTeal', 'teal'],
    ['Sea\u2060 \u200fgreen', 'SEA GREEN'],
    ['Teal\u0000', 'Teal'],
    ['ΟΔΟΣ', 'οδος'],
    ['οδοσ', 'οδος'],
    ['Weiß', 'WEISS'],
    ['ﬁg', 'fig'],
    ['Size 2', 'Size ²'],
  ])('%j is %j', (one, other) => {
    expect(nameKey(one)).toBe(nameKey(other));
  });

  it.each([
    ['Creme', 'Crème'],
    ['Lot 1', 'Lot 01'],
    ['Teal', 'Teal.'],
  ])('%j is not %j', (one, other) => {
    expect(nameKey(one)).not.toBe(nameKey(other));
  });
});

it('the form of a name is its own form, for any text', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), (name) => {
      const key = nameKey(name);
      expect(nameKey(key)).toBe(key);
      expect(nameKey(` ${name}\u200b `)).toBe(key);
      expect(nameKey(name.normalize('NFKC'))).toBe(key);
    }),
    { numRuns: 5000 },
  );
});

it('lots go letter by letter, however they are spelt (contract §4)', () => {
  const sorted = ['b 1', 'L2', 'l10', 'Ａ', 'B\u200b 0'].sort(compareLots);
  expect(sorted).toEqual(['Ａ', 'B\u200b 0', 'b 1', 'l10', 'L2']);
  expect(compareLots('l\u200b2', 'L2')).toBe(0);
});

describe('the order of names', () => {
  it('is as people count', () => {
    expect(['Tide 10', 'tide 2', 'Amber', 'Tide 1'].sort(compareNames)).toEqual([
      'Amber',
      'Tide 1',
      'tide 2',
      'Tide 10',
    ]);
  });

  it.each([
    ['Creme', 'Crème'],
    ['Lot 1', 'Lot 01'],
    ['Teal', 'TEAL'],
  ])('puts %j and %j one way round only', (one, other) => {
    expect(compareNames(one, other)).not.toBe(0);
    expect(Math.sign(compareNames(one, other))).toBe(-Math.sign(compareNames(other, one)));
    expect(compareNames(one, one)).toBe(0);
  });
});

describe('the nearest known name', () => {
  it.each([
    ['Tael', ['Slate', 'Teal', 'Foam'], 'Teal'],
    ['small tile', ['Small tiles', 'Round tiles'], 'Small tiles'],
    ['TEAL', ['Teal'], 'Teal'],
    ['Zebra', ['Slate', 'Teal'], undefined],
    ['x', [], undefined],
    ['zz', ['C1'], undefined],
    ['c2', ['C1'], 'C1'],
    ['Bxo', ['Box'], 'Box'],
    ['n'.repeat(100), ['n'.repeat(99)], undefined],
    ['harbour', ['Winter Fair', 'Harbour Fair'], 'Harbour Fair'],
    ['base', ['White clear base', 'Clear base', 'Basement'], 'Clear base'],
    ['Tide', ['Riptide', 'Low tide pool'], 'Low tide pool'],
    ['', ['Clear base'], undefined],
  ])('to %j among %j is %j', (name, known, nearest) => {
    expect(nearestName(name, known)).toBe(nearest);
  });

  it('is offered in a question, and cut where it is long', () => {
    expect(didYouMean('Tael', ['Teal'])).toBe(' Did you mean "Teal"?');
    expect(didYouMean('Zebra', ['Teal'])).toBe('');
  });
});

describe('a name in a sentence', () => {
  it.each([
    ['Teal', '"Teal"'],
    [12, '"12"'],
    [true, '"TRUE"'],
    ['two\nlines', '"two lines"'],
    ['n'.repeat(50), `"${'n'.repeat(40)}…"`],
  ])('%j is shown as %s', (cell, shown) => {
    expect(quoted(cell)).toBe(shown);
  });
});

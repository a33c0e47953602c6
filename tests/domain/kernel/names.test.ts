import { describe, expect, it } from 'vitest';
import {
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

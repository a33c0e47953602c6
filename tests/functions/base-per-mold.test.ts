import { describe, expect, it } from 'vitest';
import { errorOf, loadFunctions } from '../support/worksheet-functions.ts';
import { ranges, workshop } from '../support/small-book.ts';

const call = await loadFunctions();
const book = (): unknown => call('BOOK', ...ranges(workshop));

describe('BASEPERMOLD', () => {
  it.each([
    ['one fill', ['Tiles'], [], 25],
    ['several fills', ['Tiles'], [3], 75],
    ['no fill', ['Tiles'], [0], 0],
    ['a mold that is scraped off', ['Scraped tiles'], [2], 60],
    ['fills left blank', ['Tiles'], ['', 'Slate'], 24.25],
    // Slate is 97 g of base in 100 g.
    ['a colour', ['Tiles'], [2, 'Slate'], 48.5],
    // Mist is 15 g Slate and 10 g Foam, which is all base: (15 × 0.97 + 10) ÷ 25 of 25 g.
    ['a blend', ['Tiles'], [1, 'Mist'], 24.55],
    // 99.04 g of base with 20 drops of 1.2 g/ml at 25 drops to the ml, 0.96 g: 100 g.
    ['a colour with drops', ['Tiles'], [1, 'Teal'], 24.76],
    ['a base', ['Tiles'], [1, 'White base'], 25],
    ['names in any case', ['  tiLES '], [1, 'SLATE'], 24.25],
  ])('answers %s', (_, [mold], rest, grams) => {
    expect(call('BASEPERMOLD', mold, book(), ...rest)).toBe(grams);
  });

  it.each([
    ['half a fill', ['Tiles', 0.5], /fills is 0.5/],
    ['a negative number of fills', ['Tiles', -1], /fills is -1/],
    ['text for fills', ['Tiles', 'two'], /fills is "two", which is not a number/],
    ['an unknown mold', ['Tlies'], /"Tlies" is not a mold in Molds. Did you mean "Tiles"\?/],
    ['an unknown colour', ['Tiles', 1, 'Slatte'], /Did you mean "Slate"\?/],
    ['a material that is no soap', ['Tiles', 1, 'Box'], /"Box" has the kind packaging/],
    ['no mold', [''], /mold is blank/],
  ])('refuses %s', (_, [mold, ...rest], sentence) => {
    const { code, message } = errorOf(() => call('BASEPERMOLD', mold, book(), ...rest));
    expect(code).toBe('#VALUE!');
    expect(message).toMatch(sentence);
  });
});

describe('BASEPERMOLD of a mold of bars whose Fill g is blank', () => {
  it.each([[[]], [[3, 'Slate']]])('asks for Fill g with %j', (rest) => {
    const { code, message } = errorOf(() => call('BASEPERMOLD', 'Six bars', book(), ...rest));
    expect(code).toBe('#N/A');
    expect(message).toMatch(/Fill in Fill g for Six bars in Molds/);
  });
});

import fc from 'fast-check';
import { expect, it } from 'vitest';
import { countTiles } from '../../../src/domain/recipe/tile-count.ts';

const counts = (...pattern: string[]) =>
  countTiles(pattern).map(({ colour, tiles }) => [colour, tiles]);

it('counts tiles of each colour, most first, then as a person orders names', () => {
  expect(counts('Teal', 'Slate', 'Tide 10', 'Tide 2', 'Slate')).toEqual([
    ['Slate', 2],
    ['Teal', 1],
    ['Tide 2', 1],
    ['Tide 10', 1],
  ]);
});

it('takes one colour in other letters for the same, as it is first written, and blanks for none', () => {
  expect(counts('', '  ', ' teal', 'TEAL', 'Te\u00adal')).toEqual([['teal', 3]]);
  expect(counts()).toEqual([]);
});

it('counts every tile once, in whatever order the pattern is read', () => {
  fc.assert(
    fc.property(fc.array(fc.constantFrom('Teal', 'Slate', 'Fog', '')), (pattern) => {
      const counted = countTiles(pattern);
      const laid = pattern.filter((cell) => cell !== '');
      expect(counted.reduce((all, { tiles }) => all + tiles, 0)).toBe(laid.length);
      expect(countTiles([...pattern].reverse())).toEqual(counted);
    }),
  );
});

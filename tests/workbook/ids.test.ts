import fc from 'fast-check';
import { expect, it } from 'vitest';
import { idKey, rowsById } from '../../src/workbook/ids.ts';

it.each([
  ['case and outer spaces', ' m-1 ', 'M-1'],
  ['spaces within', 'Tide  Pool', 'tide pool'],
  ['a number and its text', 17, '17'],
  ['none', undefined, ' '],
])('tells ids alike by their meaning: %s', (_, one, other) => {
  expect(idKey(one)).toBe(idKey(other));
});

it('finds for each id just the rows that hold it, from above', () => {
  const ids = fc.array(fc.oneof(fc.constantFrom('A', 'a ', 'B', '', ' ', 7, '7'), fc.string()));
  fc.assert(
    fc.property(ids, (column) => {
      const found = rowsById(column);
      const wanted = [...column.keys()].filter((row) => idKey(column[row]) !== '');
      expect([...found.values()].flat().sort((a, b) => a - b)).toEqual(wanted);
      for (const [id, rows] of found) {
        expect(rows).toEqual(wanted.filter((row) => idKey(column[row]) === id));
      }
    }),
  );
});

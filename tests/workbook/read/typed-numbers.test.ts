import { expect, it } from 'vitest';
import { Trouble, number } from '../../../src/workbook/column.ts';

const column = number('Pack price', {}, 'What one pack costs now.');
const says = (cell: string): string => {
  const read = column.read(cell);
  return read instanceof Trouble ? read.says : 'read as a number';
};

it.each([
  [
    '5 kg',
    'is "5 kg", which is not a number. Type the number alone, in the unit that its row or header names',
  ],
  ['$42.50', 'is "$42.50", which is not a number. Type 42.5 alone'],
  ['42,50', 'is "42,50", which is not a number. Type 42.5, with a point'],
  ['€ 0,5', 'is "€ 0,5", which is not a number. Type 0.5, with a point'],
  ['-3 %', 'is "-3 %", which is not a number. Type -3 alone'],
  ['12,500', 'is "12,500", which is not a number. Type 12500 or 12.5'],
  ['2 × 500', 'is "2 × 500", which is not a number. Type a plain number'],
  ['1.200,50', 'is "1.200,50", which is not a number. Type 1200.5, with a point'],
  ['about 5.', 'is "about 5.", which is not a number. Type a plain number'],
  ['12', 'is "12", which is text: set the cell\'s format to Number and type it again'],
  [' -0.5 ', 'is " -0.5 ", which is text: set the cell\'s format to Number and type it again'],
  ['nine', 'is "nine", which is not a number. Type a plain number'],
])('says what to type instead of %s', (cell, sentence) => {
  expect(says(cell)).toBe(sentence);
});

import { expect, it } from 'vitest';
import { readHistory } from '../../../src/domain/forecast/history.ts';

it.each([
  ['plain figures', [1, 2.5, 0], [1, 2.5, 0]],
  ['a blank between figures is a month without sales', [1, '', ' ', 2], [1, 0, 0, 2]],
])('%s', (_, cells, values) => {
  expect(readHistory(cells)).toEqual({ ok: true, value: values });
});

it.each([
  [
    'text',
    [1, 'two'],
    'wrong',
    'Value 2 of history is "two", which is not a number. Give the figures alone, without headers.',
  ],
  [
    'text that looks like a number',
    [1, '2'],
    'wrong',
    'Value 2 of history is "2", which is text: set the cell\'s format to Number and type it again.',
  ],
  [
    'a tick',
    [true, 1],
    'wrong',
    'Value 1 of history is "TRUE", which is not a number. Give the figures alone, without headers.',
  ],
  ['below nothing', [1, -3], 'wrong', 'Value 2 of history is -3. Sales are 0 or more.'],
  [
    'blanks at the end',
    [1, 2, '', ''],
    'wrong',
    'history ends with 2 blank cells. Leave them out, or type 0 where nothing was sold.',
  ],
  [
    'a blank at the beginning',
    ['', 2, 3],
    'wrong',
    'history begins with a blank cell. Leave them out, or type 0 where nothing was sold.',
  ],
  [
    'nothing but blanks',
    ['', ''],
    'not yet',
    'history is blank. Give one figure for each period, oldest first.',
  ],
] as const)('%s: a sentence', (_, cells, kind, sentence) => {
  expect(readHistory(cells)).toEqual({ ok: false, failure: { kind, sentence } });
});

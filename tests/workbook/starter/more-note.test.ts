import { expect, it } from 'vitest';
import type { Workings } from '../../../src/workbook/starter/formula.ts';
import { moreNote } from '../../../src/workbook/starter/listed.ts';
import { pick, value } from '../../../src/workbook/starter/native.ts';

/** A list of two lines under its header. */
const list = {
  text: 'POUR.STOCKLIST(Book)',
  work: () => [
    ['Item', 'Unit'],
    ['Clear base', 'g'],
    ['Teal mica', 'g'],
  ],
};
const nothing = {} as Workings;

it.each([
  ['one line', 1, 'More than these.'],
  ['as many lines as there are', 2, ''],
  ['more lines than there are', 3, ''],
])('a list with room for %s', (_, room, expected) => {
  expect(moreNote(pick(list, room + 2, 1), 'More than these.').work(nothing)).toBe(expected);
});

it('a blank beyond the list is nothing more', () => {
  expect(moreNote(value(''), 'More than these.').work(nothing)).toBe('');
});

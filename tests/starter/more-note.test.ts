import { expect, it } from 'vitest';
import type { Workings } from '../../src/starter/cells/formula.ts';
import { moreNote, unlessCut } from '../../src/starter/blocks/listed.ts';
import { textsIn, value } from '../../src/starter/cells/native.ts';

const nothing = {} as Workings;

/** The names of a list from where its room ends. */
const beyond = (...names: readonly string[]) => textsIn({ text: 'A9:A20', work: () => names });

it.each([
  ['no names beyond its room', [], ''],
  ['one name beyond', ['Teal mica'], 'and 1 more: see the shelf.'],
  ['two, with a blank between', ['Teal mica', '', 'Clear base'], 'and 2 more: see the shelf.'],
])('a list with %s', (_, names, expected) => {
  expect(moreNote(beyond(...names), 'see the shelf.').work(nothing)).toBe(expected);
});

it('nothing is counted of a part of a list', () => {
  expect(unlessCut(beyond(''), value(3)).work(nothing)).toBe(3);
  expect(unlessCut(beyond('Teal mica'), value(3)).work(nothing)).toBe('more lines than shown');
});

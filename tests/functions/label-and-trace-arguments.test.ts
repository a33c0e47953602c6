import { describe, expect, it } from 'vitest';
import { errorOf, loadFunctions } from '../support/worksheet-functions.ts';
import { fullWorkshop } from '../support/full-workshop.ts';
import { ranges } from '../support/small-book.ts';

const call = await loadFunctions();
// Every material with a label name, so that a label can be written.
const labelled = {
  ...fullWorkshop,
  Materials: (fullWorkshop['Materials'] ?? []).map((row, at) => [
    ...row,
    at === 0 ? 'INCI' : 'Aqua',
  ]),
};
const book = call('BOOK', ...ranges(labelled));
const FORGOTTEN = 'book 0123456789abcdef';

/** What may stand where a name is asked for, and the sentence that says what to do. */
const badNames: readonly (readonly [string, unknown, RegExp])[] = [
  ['nothing', '', /is blank\. Give its name\.$/u],
  ['a blank cell', [['']], /is blank\. Give its name\.$/u],
  ['left out', undefined, /is blank\. Give its name\.$/u],
  ['two cells', [['A', 'B']], /must be one cell, not a range of cells\. Give one cell\.$/u],
  ['two rows', [['A'], ['B']], /must be one cell, not a range of cells\. Give one cell\.$/u],
  ['an object', {}, /must be one value\. Give one cell or a plain value\.$/u],
  ['not a number', Number.NaN, /NaN/u],
  ['a number', 12, /"12" is (?:not a design|neither a lot)/u],
  ['TRUE', true, /"true" is (?:not a design|neither a lot)/u],
  ['a formula as text', '=1+1', /"=1\+1" is (?:not a design|neither a lot)/u],
  ['a very long name', 'x'.repeat(40_000), /…?"? is (?:not a design|neither a lot)/u],
];

const badBooks: readonly (readonly [string, unknown, string, RegExp])[] = [
  ['nothing', '', '#VALUE!', /^book is blank\. Give the cell named Book\.$/u],
  ['left out', undefined, '#VALUE!', /^book is blank\. Give the cell named Book\.$/u],
  ['a number', 7, '#VALUE!', /^"7" is not a book\. Give the cell named Book/u],
  ['a design', 'Tide Pool', '#N/A', /^"Tide Pool" is not a book\. Give the cell named Book/u],
  ['a table', [['Material', 'Kind']], '#VALUE!', /^book must be one cell/u],
  [
    'a forgotten book',
    FORGOTTEN,
    '#N/A',
    /recalculate the cell named Book \(select it, press F2, then Enter\)/u,
  ],
];

describe.each([
  ['INGREDIENTS', 'Tide Pool', 'design'],
  ['CHECKS', 'Tide Pool', 'design'],
  ['TRACE', 'C1', 'lot or batch'],
])('%s', (id, name, what) => {
  it('answers where all is given', () => {
    expect(() => call(id, name, book)).not.toThrow();
  });

  it.each(badNames)(`refuses %s for ${what}`, (_, given, sentence) => {
    const { code, message } = errorOf(() => call(id, given, book));
    expect(code).toBe('#VALUE!');
    expect(message).toMatch(sentence);
    expect(message.length).toBeLessThan(300);
  });

  it.each(badBooks)('refuses %s for book', (_, given, code, sentence) => {
    const failure = errorOf(() => call(id, name, given));
    expect(failure.code).toBe(code);
    expect(failure.message).toMatch(sentence);
  });
});

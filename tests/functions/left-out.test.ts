import { describe, expect, it } from 'vitest';
import { loadFunctions } from '../support/worksheet-functions.ts';
import { fullWorkshop } from '../support/full-workshop.ts';
import { ranges, withRows } from '../support/small-book.ts';

const call = await loadFunctions();
// A plan that no test run is late for.
const planned = withRows(fullWorkshop, 'Plan', ['Q1', 'Tide Pool', 6, '2199-12-20', '']);
const book = call('BOOK', ...ranges(planned));
const history = [3, 5, 4, 6, 7, 5].map((sold) => [sold]);

/** Arguments that must be given, then those that may be left out, with what leaving out stands for. */
const calls: readonly (readonly [string, readonly unknown[], readonly unknown[]])[] = [
  ['BASEPERMOLD', ['Tiles', book], [1, undefined]],
  ['TILECOUNT', [[['Teal', 'Foam']]], [undefined]],
  ['MELTSHEET', ['Tide Pool'], [12, book, false]],
  ['MATERIALS', ['Tide Pool'], [12, book, false]],
  ['ONHAND', ['Clear base', book], [undefined]],
  ['STOCKVALUE', ['Clear base', book], [undefined]],
  ['UNITCOST', ['Clear base', book], [undefined]],
  ['STOCKLIST', [book], [undefined]],
  ['SAFETYSTOCK', [95, 5, 10], [0, 0]],
  ['COSTPERBAR', ['Tide Pool', book], [12, undefined]],
  ['COSTLINES', ['Tide Pool', book], [12, undefined]],
  ['PRICE', [4, 50], [0, 0, 0, undefined]],
  ['FORECAST', [history, 3], [12]],
  ['SUPPLIES', [book], [undefined, false]],
  ['CALENDAR', [book], [undefined]],
  ['AMOUNT', [1, 'oz', 'g'], [undefined, undefined]],
];

/** As spreadsheets and other callers hand over what stands nowhere. */
const nothings = ['', ' ', null, undefined, [['']], [[null]]];

describe.each(calls)('%s', (id, given, standard) => {
  const answer = call(id, ...given, ...standard);

  it.each(standard.map((_, at) => at).filter((at) => standard[at] !== book))(
    'takes its usual value where argument %d of those that may be blank is',
    (at) => {
      for (const nothing of nothings)
        expect(call(id, ...given, ...standard.with(at, nothing)), String(nothing)).toEqual(answer);
    },
  );

  it('takes each value as a range of one cell too', () => {
    const asRange = (value: unknown): unknown =>
      Array.isArray(value) || value === undefined ? value : [[value]];
    expect(call(id, ...given.map(asRange), ...standard.map(asRange))).toEqual(answer);
  });

  it('looks at nothing that a host adds at the end', () => {
    expect(call(id, ...given, ...standard, { address: 'Sheet1!A1' })).toEqual(answer);
  });
});

// Contract §5: a batch size of 12 is the default where bars is blank.
it.each(['MELTSHEET', 'MATERIALS'])('%s answers for 12 bars and not for 6', (id) => {
  expect(call(id, 'Tide Pool', '', book)).not.toEqual(call(id, 'Tide Pool', 6, book));
});

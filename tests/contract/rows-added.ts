import { recipe, teal } from '../support/shared-ids.ts';
import { table } from '../support/small-book.ts';
import { add, type ChangeCase, foam, ledger, set, two } from './change-case.ts';

/** Rows that go in. */
export const added: readonly ChangeCase[] = [
  {
    name: 'a row goes in below the last, by header whatever its case and spaces',
    tables: { Moves: table(' entry |  Quantity  | Note', ...two) },
    change: add({ Entry: 'M-3', QUANTITY: 4, Note: '' }),
    ends: 'applied',
    after: { Moves: table(' entry |  Quantity  | Note', ...two, ['M-3', 4, '']) },
  },
  {
    name: 'a text stays the very text',
    tables: ledger(),
    change: add({ Entry: '007', Quantity: 1, Note: '=HYPERLINK("x")' }),
    ends: 'applied',
    after: ledger(['007', 1, '=HYPERLINK("x")']),
  },
  {
    name: 'blank last rows are filled before the table grows',
    tables: ledger(two[0], ['', '', ''], ['', '', '']),
    change: add({ Entry: 'M-3', Quantity: 1 }, { Entry: 'M-4', Quantity: 2 }, { Entry: 'M-5' }),
    ends: 'applied',
    after: ledger(two[0], ['M-3', 1, ''], ['M-4', 2, ''], ['M-5', '', '']),
  },
  {
    name: 'the blank first line of an empty table is filled',
    tables: ledger(['', '', '']),
    change: add({ Entry: 'M-1', Quantity: 1 }),
    ends: 'applied',
    after: ledger(['M-1', 1, '']),
  },
  {
    name: 'a blank row between others stays, and so does one with a note of its own',
    tables: ledger(['', '', ''], two[0], ['', '', ''], ['', '', 'ask Ida'], ['', '', '']),
    change: add({ Entry: 'M-3', Quantity: 1 }, { Entry: 'M-4', Quantity: 2 }),
    ends: 'applied',
    after: ledger(
      ['', '', ''],
      two[0],
      ['', '', ''],
      ['', '', 'ask Ida'],
      ['M-3', 1, ''],
      ['M-4', 2, ''],
    ),
  },
  {
    name: "a blank row in which the maker's own column shows something is blank",
    tables: ledger(two[0], ['', '', '0 g']),
    formulas: [{ table: 'Moves', row: 1, column: 2, formula: '=N(Moves[Quantity])&" g"' }],
    change: add({ Entry: 'M-3', Quantity: 1 }),
    ends: 'applied',
    after: ledger(two[0], ['M-3', 1, '0 g']),
  },
  {
    name: 'a blank row with a formula where something is to be written is not filled',
    tables: ledger(two[0], ['', '', '']),
    formulas: [{ table: 'Moves', row: 1, column: 2, formula: '=IF(TRUE,"","")' }],
    change: add({ Entry: 'M-3', Quantity: 1, Note: 'x' }),
    ends: 'applied',
    after: ledger(two[0], ['', '', ''], ['M-3', 1, 'x']),
  },
  {
    name: 'two parts of one change follow each other in one table',
    tables: ledger(['', '', '']),
    change: {
      appends: [...add({ Entry: 'M-1' }).appends, ...add({ Entry: 'M-2', Note: 'x' }).appends],
      updates: [],
    },
    ends: 'applied',
    after: ledger(['M-1', '', ''], ['M-2', '', 'x']),
  },
  {
    name: 'the same row twice in one change is written once',
    tables: ledger(),
    change: add({ Entry: 'M-3', Quantity: 1 }, { Entry: 'm-3 ', Quantity: 1, Note: '' }),
    ends: 'applied',
    after: ledger(['M-3', 1, '']),
  },
];

/** Rows and cells that stand already. */
export const there: readonly ChangeCase[] = [
  {
    name: 'only rows that are missing are added',
    tables: ledger(...two),
    change: add({ Entry: 'M-1', Quantity: -250 }, { Entry: 'M-4', Quantity: 1 }, foam),
    ends: 'applied',
    after: ledger(...two, ['M-4', 1, '']),
  },
  {
    name: 'an id kept as a number is the one written as text',
    tables: ledger([17, 3, 'Foam']),
    change: add({ Entry: '17', Quantity: 3, Note: 'Foam' }),
    ends: 'already there',
  },
  {
    name: 'an id in another case is the same',
    tables: ledger(['m-2', 3, 'Foam']),
    change: add(foam),
    ends: 'already there',
  },
  {
    name: 'a quantity kept as text is the same',
    tables: ledger(['M-2', '3', 'Foam']),
    change: add(foam),
    ends: 'already there',
  },
  {
    name: 'a trailing space is none',
    tables: ledger(['M-2', 3, 'Foam ']),
    change: add(foam),
    ends: 'already there',
  },
  {
    name: '0.1 + 0.2 is 0.3',
    tables: ledger(['M-2', 0.3, '']),
    change: add({ Entry: 'M-2', Quantity: 0.1 + 0.2 }),
    ends: 'already there',
  },
  {
    name: 'what a cell holds by now is left alone where all rows stand',
    tables: ledger(['M-1', -250, 'mine'], two[1]),
    change: { ...add(foam), updates: set({ Note: 'theirs' }).updates },
    ends: 'already there',
  },
  {
    name: 'a cell that holds its value is set already',
    tables: ledger(['M-1', 0.3, 'x']),
    change: set({ quantity: 0.1 + 0.2, NOTE: 'x' }),
    ends: 'already there',
  },
  {
    name: 'a change of nothing is there already',
    tables: ledger(...two),
    change: add(),
    ends: 'already there',
  },
];

/** Lines of one recipe. */
export const shared: readonly ChangeCase[] = [
  {
    name: 'lines that share an id are told apart by their order: all there',
    tables: { Colours: [teal.headers, ...teal.rows] },
    change: recipe(100, 8),
    ends: 'already there',
  },
  {
    name: 'lines that share an id: one is missing',
    tables: { Colours: [teal.headers, ...teal.rows] },
    change: recipe(100, 8, 1),
    ends: 'applied',
    after: { Colours: [teal.headers, ...teal.rows, ['Teal', 'Mica', 1]] },
  },
  {
    name: 'lines that share an id: one differs',
    tables: { Colours: [teal.headers, ...teal.rows] },
    change: recipe(100, 9),
    ends: /^Colours already has a different row with Colour "Teal": Amount is 8 there, not 9\./,
  },
  {
    name: 'lines that share an id are all added where there is none',
    tables: { Colours: [teal.headers, ['', '', '']] },
    change: recipe(100, 8),
    ends: 'applied',
    after: { Colours: [teal.headers, ...teal.rows] },
  },
];

import type { Cell, Change, Removal, RowToWrite, Update } from '../../src/workbook/port.ts';
import { recipe, teal } from '../support/shared-ids.ts';
import { table, type Tables } from '../support/small-book.ts';

/** A formula in a table's cell, by body row and column; the table holds what it shows. */
export interface FormulaAt {
  readonly table: string;
  readonly row: number;
  readonly column: number;
  readonly formula: string;
}

/** One change, and what every host must make of it. */
export interface ChangeCase {
  readonly name: string;
  readonly tables: Tables;
  readonly formulas?: readonly FormulaAt[];
  readonly change: Change;
  /** How it ends; of a refusal, what the sentence says. */
  readonly ends: 'applied' | 'already there' | RegExp;
  /** The tables afterwards, where something was written. */
  readonly after?: Tables;
}

/** A small ledger; its rows are written down as they stand. */
const ledger = (...rows: readonly (readonly Cell[])[]): Tables => ({
  Moves: table('Entry | Quantity | Note', ...rows),
});
const two = [
  ['M-1', -250, ''],
  ['M-2', 3, 'Foam'],
] as const;

export const add = (...rows: readonly RowToWrite[]): Change => ({
  appends: [{ table: 'Moves', idColumn: 'Entry', rows }],
  updates: [],
});
const set = (cells: RowToWrite, more: Partial<Update> = {}): Change => ({
  appends: [],
  updates: [{ table: 'Moves', idColumn: 'Entry', id: 'M-1', set: cells, ...more }],
});
const clear = (was: RowToWrite, more: Partial<Removal> = {}): Change => ({
  appends: [],
  updates: [],
  removals: [{ table: 'Moves', idColumn: 'Entry', id: 'M-2', was, ...more }],
});
const foam = { Entry: 'M-2', Quantity: 3, Note: 'Foam' };

const added: readonly ChangeCase[] = [
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

const there: readonly ChangeCase[] = [
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

const cells: readonly ChangeCase[] = [
  {
    name: 'cells are set in the one row of that id, beside rows that are added',
    tables: ledger(...two),
    change: { ...add({ Entry: 'M-3' }), updates: set({ Note: 'x', Quantity: 1 }).updates },
    ends: 'applied',
    after: ledger(['M-1', 1, 'x'], two[1], ['M-3', '', '']),
  },
  {
    name: 'a cell is set by an id that is kept as a number, or in another case with spaces',
    tables: ledger([17, 1, ''], [' fair  BARS', 2, '']),
    change: {
      appends: [],
      updates: ['17', 'Fair bars'].flatMap((id) => set({ Note: 'x' }, { id }).updates),
    },
    ends: 'applied',
    after: ledger([17, 1, 'x'], [' fair  BARS', 2, 'x']),
  },
  {
    name: 'a number goes over the same kept as text, and a text over the same with a space',
    tables: ledger(['M-1', '3', 'Foam ']),
    change: set({ Quantity: 3, Note: 'Foam' }),
    ends: 'applied',
    after: ledger(['M-1', 3, 'Foam']),
  },
  {
    name: 'of two values for one cell the later stands',
    tables: ledger(...two),
    change: {
      appends: [],
      updates: [...set({ Note: 'x' }).updates, ...set({ Note: 'y' }).updates],
    },
    ends: 'applied',
    after: ledger(['M-1', -250, 'y'], two[1]),
  },
  {
    name: 'a cell beside a formula is set, and the formula where it shows the value already',
    tables: ledger(['M-1', 6, 'x'], two[1]),
    formulas: [{ table: 'Moves', row: 0, column: 1, formula: '=2*3' }],
    change: set({ Quantity: 6, Note: 'y' }),
    ends: 'applied',
    after: ledger(['M-1', 6, 'y'], two[1]),
  },
  {
    name: 'a formula is never written over',
    tables: ledger(['M-1', 6, 'x'], two[1]),
    formulas: [{ table: 'Moves', row: 0, column: 1, formula: '=2*3' }],
    change: set({ Quantity: 7, Note: 'y' }),
    ends: /^Moves, Entry "M-1": the cell under Quantity holds a formula.*then try again/,
  },
];

const cleared: readonly ChangeCase[] = [
  {
    name: 'a row is cleared, but for columns that are not named',
    tables: { Moves: table('Entry | Quantity | Note | Own', ['M-2', 3, 'Foam', 'mine']) },
    change: clear(foam),
    ends: 'applied',
    after: { Moves: table('Entry | Quantity | Note | Own', ['', '', '', 'mine']) },
  },
  {
    name: 'a row to clear that is gone is cleared already',
    tables: ledger(two[0]),
    change: clear(foam),
    ends: 'already there',
  },
  {
    name: 'a row that was cleared in part is cleared to the end',
    tables: ledger(['M-2', '', 'Foam']),
    change: clear(foam),
    ends: 'applied',
    after: ledger(['', '', '']),
  },
  {
    name: 'a row is cleared whether its quantity is kept as text or not',
    tables: ledger(['m-2', '3', 'Foam ']),
    change: clear(foam),
    ends: 'applied',
    after: ledger(['', '', '']),
  },
  {
    name: 'a row that a partner changed is not cleared',
    tables: ledger(...two),
    change: clear({ ...foam, Quantity: 4 }),
    ends: /^Moves, Entry M-2: Quantity was 4 and is 3 now, perhaps by a partner\. Nothing was written; look at that row, then try again\.$/,
  },
  {
    name: 'a row with a formula is not cleared',
    tables: ledger(...two),
    formulas: [{ table: 'Moves', row: 1, column: 2, formula: '="Fo"&"am"' }],
    change: clear(foam),
    ends: /the cell under Note holds a formula/,
  },
  {
    name: 'of two rows of one id none is cleared',
    tables: ledger(two[1], two[1]),
    change: clear(foam),
    ends: /^Moves has 2 rows with Entry "M-2"/,
  },
];

const shared: readonly ChangeCase[] = [
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

const refused: readonly ChangeCase[] = [
  {
    name: 'an id that stands with other cells',
    tables: ledger(...two),
    change: add({ Entry: 'M-3' }, { Entry: 'M-1', Quantity: 9 }),
    ends: /^Moves already has a different row with Entry "M-1": Quantity is -250 there, not 9\. Nothing was written; look at that row first, then start again\.$/,
  },
  {
    name: 'two rows of one id that differ',
    tables: ledger(),
    change: add({ Entry: 'M-5', Quantity: 1 }, { Entry: 'M-5', Quantity: 2 }),
    ends: /^Two rows for Moves have the same Entry "M-5" but differ in Quantity\./,
  },
  {
    name: 'a row without an id',
    tables: ledger(),
    change: add({ Entry: ' ', Quantity: 1 }),
    ends: /^A row for Moves has no Entry\./,
  },
  {
    name: 'a header that is not there',
    tables: ledger(),
    change: add({ Entry: 'M-5', Colour: 'Teal' }),
    ends: /^Moves has no column "Colour"\..*Put the column back/,
  },
  {
    name: 'an id column that is not there',
    tables: ledger(...two),
    change: set({ Note: 'x' }, { idColumn: 'Id' }),
    ends: /^Moves has no column "Id"\./,
  },
  {
    name: 'a table that is not there',
    tables: ledger(),
    change: { appends: [{ table: 'Movess', idColumn: 'Entry', rows: [] }], updates: [] },
    ends: /^This workbook has no table named Movess\..*Put it back/,
  },
  {
    name: 'a number that no cell can hold',
    tables: ledger(),
    change: add({ Entry: 'M-5', Quantity: Number.NaN }),
    ends: /^Quantity for Moves is not a number a cell can hold\.$/,
  },
  {
    name: 'a text that no cell can hold',
    tables: ledger(),
    change: add({ Entry: 'M-5', Note: 'x'.repeat(32_768) }),
    ends: /^Note for Moves is longer than the 32767 characters/,
  },
  {
    name: 'a row to set that is gone',
    tables: ledger(...two),
    change: { ...add({ Entry: 'M-3' }), updates: set({ Note: 'x' }, { id: 'M-9' }).updates },
    ends: /^Moves has no row with Entry "M-9" any more\..*Put it back/,
  },
  {
    name: 'a row to set of which there are two',
    tables: ledger(two[0], two[0]),
    change: set({ Note: 'x' }),
    ends: /^Moves has 2 rows with Entry "M-1"\. Give each its own/,
  },
  {
    name: 'a third row of which there are two',
    tables: ledger(two[0], two[0]),
    change: set({ Note: 'x' }, { nth: 2 }),
    ends: /^Moves has no row with Entry "M-1" any more\./,
  },
];

/** What a change means, case by case. */
export const changeCases: readonly ChangeCase[] = [
  ...added,
  ...there,
  ...cells,
  ...cleared,
  ...shared,
  ...refused,
];

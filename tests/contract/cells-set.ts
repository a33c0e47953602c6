import { table } from '../support/small-book.ts';
import { add, type ChangeCase, clear, foam, ledger, set, two } from './change-case.ts';

/** Cells of rows that stand. */
export const cells: readonly ChangeCase[] = [
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

/** Rows that are taken away. */
export const cleared: readonly ChangeCase[] = [
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

/** Changes of which nothing may be written. */
export const refused: readonly ChangeCase[] = [
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

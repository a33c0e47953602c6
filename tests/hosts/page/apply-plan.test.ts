import { describe, expect, it } from 'vitest';
import { planOf, type PlanTable } from '../../../src/hosts/workbench/page/apply-plan.ts';
import type { Change, RowToWrite, Update } from '../../../src/workbook/port.ts';
import { recipe, teal } from '../../support/shared-ids.ts';

const moves: PlanTable = {
  name: 'Moves',
  headers: ['Entry', ' Quantity ', 'Note'],
  rows: [
    ['M-1', -250, ''],
    ['M-2', 3, 'Foam'],
    ['', '', ''],
  ],
  isFormula: (row, column) => row === 1 && column === 2,
};

const append = (...rows: RowToWrite[]): Change => ({
  appends: [{ table: 'moves', idColumn: 'entry', rows }],
  updates: [],
});
const update = (more: Partial<Update>): Change => ({
  appends: [],
  updates: [{ table: 'Moves', idColumn: 'Entry', id: 'M-1', set: { Note: 'x' }, ...more }],
});

describe('planOf', () => {
  it('writes into the first blank row, by header whatever its case and spaces', () => {
    expect(planOf([moves], append({ entry: 'M-3', QUANTITY: 4, Note: '' }))).toEqual({
      kind: 'write',
      writes: [
        { table: 'Moves', row: 2, column: 0, value: 'M-3' },
        { table: 'Moves', row: 2, column: 1, value: 4 },
      ],
    });
  });

  it('adds only the rows that are missing', () => {
    const plan = planOf([moves], append({ Entry: 'M-1', Quantity: -250 }, { Entry: 'M-4' }));
    expect(plan).toEqual({
      kind: 'write',
      writes: [{ table: 'Moves', row: 2, column: 0, value: 'M-4' }],
    });
  });

  it.each([
    ['the same row', append({ Entry: 'M-2', Quantity: 3, Note: 'Foam' })],
    ['the same row with its number as text', append({ Entry: 'm-2', Quantity: '3' })],
  ])('is already there: %s', (_, change) => {
    expect(planOf([moves], change)).toEqual({ kind: 'already there' });
  });

  it.each([
    [
      'an id that stands with other content',
      append({ Entry: 'M-1', Quantity: 9 }),
      'Moves, entry M-1 is there already with another Quantity: -250, not 9. Nothing was written.',
    ],
    [
      'two new rows of one id that differ',
      append({ Entry: 'M-5', Quantity: 1 }, { Entry: 'M-5', Quantity: 2 }),
      'Moves: two rows to add share the entry M-5 but differ.',
    ],
    ['no id', append({ Quantity: 1 }), 'Moves: a row to add has no entry.'],
    [
      'an unknown header',
      append({ Entry: 'M-5', Colour: 'Teal' }),
      'The table Moves has no column Colour: add it, then try again.',
    ],
    [
      'an unknown table',
      { ...append(), appends: [{ table: 'Movess', idColumn: 'Entry', rows: [] }] },
      'The workbook has no table named Movess.',
    ],
    [
      'no number',
      append({ Entry: 'M-5', Quantity: Number.NaN }),
      'Moves, Quantity: NaN is no number to write.',
    ],
    [
      'a row to update that is gone',
      update({ id: 'M-9' }),
      'Moves, Entry M-9: there is no such row any more. Read again.',
    ],
    [
      'a formula in the way',
      update({ id: 'M-2' }),
      'Moves, Entry M-2: the cell under Note holds a formula, which is not overwritten.',
    ],
  ] satisfies [string, Change, string][])('refuses: %s', (_, change, sentence) => {
    expect(planOf([moves], change)).toEqual({ kind: 'refused', sentence });
  });

  it('updates the one row of that id', () => {
    expect(planOf([moves], update({}))).toEqual({
      kind: 'write',
      writes: [{ table: 'Moves', row: 0, column: 2, value: 'x' }],
    });
  });
});

describe('a row to clear', () => {
  const free: PlanTable = { ...moves, isFormula: () => false };
  const removal = (was: RowToWrite, id = 'M-2'): Change => ({
    appends: [],
    updates: [],
    removals: [{ table: 'Moves', idColumn: 'Entry', id, was }],
  });
  const whole = { Entry: 'M-2', Quantity: 3, Note: 'Foam' };

  it('is cleared cell by cell, its id last', () => {
    expect(planOf([free], removal(whole))).toEqual({
      kind: 'write',
      writes: [1, 2, 0].map((column) => ({ table: 'Moves', row: 1, column, value: '' })),
    });
  });

  it('keeps the columns that are not named', () => {
    const plan = planOf([free], removal({ Entry: 'M-2', Quantity: 3 }));
    expect(plan.kind === 'write' && plan.writes.map(({ column }) => column)).toEqual([1, 0]);
  });

  it('is there already where no row holds the id, and goes on where only some of it is blank', () => {
    expect(planOf([free], removal({ ...whole, Entry: 'M-9' }, 'M-9'))).toEqual({
      kind: 'already there',
    });
    const half = { ...free, rows: free.rows.map((row) => row.with(1, '')) };
    expect(planOf([half], removal(whole))).toMatchObject({ kind: 'write' });
  });

  it.each([
    [
      'a partner changed it meanwhile',
      free,
      { ...whole, Quantity: 4 },
      'Moves, Entry M-2: Quantity was 4 and is 3 now, perhaps by a partner. Nothing was written; look at that row, then try again.',
    ],
    [
      'a formula stands in it',
      moves,
      whole,
      'Moves, Entry M-2: the cell under Note holds a formula, which is not overwritten.',
    ],
    [
      'two rows hold the id',
      { ...free, rows: [...free.rows, free.rows[1] ?? []] },
      whole,
      'Moves, Entry M-2 stands in 2 rows: keep one, then try again.',
    ],
  ] satisfies [string, PlanTable, RowToWrite, string][])('is refused where %s', (...given) => {
    const [, table, was, sentence] = given;
    expect(planOf([table], removal(was))).toEqual({ kind: 'refused', sentence });
  });
});

describe('lines that share an id', () => {
  const colours: PlanTable = {
    name: 'Colours',
    ...teal,
    isFormula: () => false,
  };

  it('are told apart by their order: all there, some missing, one different', () => {
    expect(planOf([colours], recipe(100, 8))).toEqual({ kind: 'already there' });
    expect(planOf([colours], recipe(100, 8, 1))).toMatchObject({
      kind: 'write',
      writes: [
        { row: 2, value: 'Teal' },
        { row: 2, value: 'Mica' },
        { row: 2, value: 1 },
      ],
    });
    expect(planOf([colours], recipe(100, 9))).toMatchObject({ kind: 'refused' });
  });

  it('are all added where there is none', () => {
    const plan = planOf([{ ...colours, rows: [] }], recipe(100, 8));
    expect(plan.kind === 'write' && plan.writes.map(({ row }) => row)).toEqual([0, 0, 0, 1, 1, 1]);
  });

  it('are set one by one by their place among them', () => {
    const set = (nth?: number): Change => ({
      appends: [],
      updates: [
        {
          table: 'Colours',
          idColumn: 'Colour',
          id: 'Teal',
          set: { Amount: 1 },
          ...(nth === undefined ? {} : { nth }),
        },
      ],
    });
    expect(planOf([colours], set(1))).toMatchObject({ writes: [{ row: 1, column: 2, value: 1 }] });
    expect(planOf([colours], set(2))).toMatchObject({ kind: 'refused' });
    expect(planOf([colours], set())).toMatchObject({ kind: 'refused' });
  });
});

import { describe, expect, it } from 'vitest';
import type { Change, RowToWrite } from '../../../src/workbook/port.ts';
import { post } from './host/demo-book.ts';
import { open } from './host/open.ts';
import type { WorkbookModel } from './host/workbook-model.ts';

const rowsOf = (model: WorkbookModel, table: string) => model.table(table).rows;

describe('writing a change', () => {
  it('sets cells, adds rows by header at the end, and has dependents worked out', async () => {
    const { model, port } = open();
    expect(await port.apply(post(2))).toEqual({ kind: 'applied' });
    expect(rowsOf(model, 'Moves')).toEqual([
      ['m1', 46_000, 'Clear base', -250, ''],
      ['p-0', 46_001, 'Clear base', -1.1, ''],
      ['p-1', 46_001, 'Clear base', -2.2, ''],
    ]);
    expect(rowsOf(model, 'Batches')).toEqual([
      ['b1', 'sold out', 12, 24],
      ['b0', 'undone', 6, 12],
      // The table's own calculated column is left to the table.
      ['b2', 'made', 12, 'worked out'],
    ]);
  });

  it.each([
    '=HYPERLINK("https://soap.example","x")',
    '+1',
    '-5',
    '@SUM(A1)',
    "'quoted'",
    '007',
    '1e5',
    '2026-11-25',
    '1/2',
    'TRUE',
    'Slate × Small tiles',
    'Teal',
    '  padded  ',
  ])('keeps the text %j as text, whatever Excel would make of it', async (text) => {
    const { model, port } = open();
    await port.apply({
      appends: [{ table: 'Moves', idColumn: 'Entry', rows: [{ Entry: 'x', Material: text }] }],
      updates: [{ table: 'Batches', idColumn: 'Batch', id: 'b1', set: { State: text } }],
    });
    expect(rowsOf(model, 'Moves').at(-1)?.[2]).toBe(text);
    expect(rowsOf(model, 'Batches')[0]?.[1]).toBe(text);
  });
});

describe('posting again', () => {
  it('writes nothing the second time', async () => {
    const { model, port } = open();
    await port.apply(post(3));
    const once = model.contents();
    expect(await port.apply(post(3))).toEqual({ kind: 'already there' });
    expect(model.contents()).toBe(once);
  });

  it('adds only the rows that are missing', async () => {
    const { model, port } = open();
    await port.apply(post(3));
    model.table('Moves').deleteRows(2, 1);
    expect(await port.apply(post(3))).toEqual({ kind: 'applied' });
    const ids = rowsOf(model, 'Moves').map(([id]) => id);
    expect(ids).toEqual(['m1', 'p-0', 'p-2', 'p-1']);
  });

  it('refuses where an id stands with other cells, and names it', async () => {
    const { model, port } = open();
    await port.apply(post(3));
    model.table('Moves').setCell(2, 3, -99);
    const before = model.contents();
    expect(await port.apply(post(3))).toEqual({
      kind: 'refused',
      sentence: expect.stringContaining('different row with Entry "p-1"') as string,
    });
    expect(model.contents()).toBe(before);
  });

  it.each([
    ['a number in the sheet', 17, '17'],
    ['in another case, with spaces', ' Fair  bars', 'fair Bars'],
  ])('finds an id that is %s', async (_, inSheet, id) => {
    const { model, port } = open();
    model.table('Batches').addRows([[inSheet, 'made', 5, 10]], 'Remote');
    const set = { State: 'undone' };
    await port.apply({
      appends: [],
      updates: [{ table: 'Batches', idColumn: 'Batch', id, set }],
    });
    expect(rowsOf(model, 'Batches').at(-1)?.[1]).toBe('undone');
  });

  it('answers already there for a cell that is set already', async () => {
    const { host, port } = open();
    const change: Change = {
      appends: [],
      updates: [{ table: 'batches', idColumn: 'BATCH', id: 'b1', set: { state: 'made' } }],
    };
    expect(await port.apply(change)).toEqual({ kind: 'already there' });
    expect(host.syncs).toBe(4);
  });
});

describe('clearing a row', () => {
  const removal = (was: RowToWrite, id = 'b0'): Change => ({
    appends: [],
    updates: [],
    removals: [{ table: 'Batches', idColumn: 'Batch', id, was }],
  });
  const whole = { Batch: 'b0', State: 'undone', Bars: 6 };

  it('blanks its cells, leaves columns not named, and once is enough', async () => {
    const { model, port } = open();
    expect(await port.apply(removal(whole))).toEqual({ kind: 'applied' });
    expect(rowsOf(model, 'Batches')).toEqual([
      ['b1', 'made', 12, 24],
      ['', '', '', 12],
    ]);
    const once = model.contents();
    expect(await port.apply(removal(whole))).toEqual({ kind: 'already there' });
    expect(model.contents()).toBe(once);
  });

  it('refuses where a partner changed the row meanwhile, and names the cell', async () => {
    const { model, port } = open();
    model.table('Batches').setCell(1, 2, 7);
    const before = model.contents();
    expect(await port.apply(removal(whole))).toEqual({
      kind: 'refused',
      sentence:
        'Batches, Batch b0: Bars was 6 and is 7 now, perhaps by a partner. Nothing was written; look at that row, then try again.',
    });
    expect(model.contents()).toBe(before);
  });

  it('refuses where two rows hold the id', async () => {
    const { model, port } = open();
    model.table('Batches').addRows([['b0', 'undone', 6, 12]], 'Remote');
    expect(await port.apply(removal(whole))).toEqual({
      kind: 'refused',
      sentence: expect.stringContaining('2 rows with Batch "b0"') as string,
    });
  });
});

describe('refusing before anything is written', () => {
  const one = (table: string, row: Record<string, string | number>): Change => ({
    appends: [{ table, idColumn: 'Entry', rows: [row] }],
    updates: [],
  });
  const batch = (id: string): Change => ({
    appends: post(1).appends,
    updates: [{ table: 'Batches', idColumn: 'Batch', id, set: { State: 'x' } }],
  });

  it.each<[string, Change, (model: WorkbookModel) => void, RegExp]>([
    [
      'a table that is gone',
      post(1),
      (model) => model.removeTable('Moves'),
      /no table named Moves.*Table Name/,
    ],
    [
      'a protected sheet',
      post(1),
      (model) => void (model.sheet('Batches sheet').protected = true),
      /"Batches sheet" is protected.*Unprotect/,
    ],
    [
      'a missing column',
      one('Moves', { Entry: 'x', Lott: '1' }),
      () => undefined,
      /no column "Lott"/,
    ],
    [
      'a missing id column',
      post(1),
      (model) => model.table('Moves').sheet.put(0, 0, 'Id'),
      /no column "Entry"/,
    ],
    ['a row without an id', one('Moves', { Entry: ' ' }), () => undefined, /has no Entry/],
    [
      'one id twice',
      {
        appends: [{ table: 'Moves', idColumn: 'Entry', rows: [{ Entry: 'x' }, { Entry: 'x' }] }],
        updates: [],
      },
      () => undefined,
      /same Entry "x"/,
    ],
    ['an update of a row not there', batch('b9'), () => undefined, /no row with Batch "b9"/],
    [
      'an update of a row there twice',
      batch('b1'),
      (model) => model.table('Batches').addRows([['b1', 'made', 1, 2]], 'Remote'),
      /2 rows with Batch "b1"/,
    ],
    [
      'a number no cell can hold',
      one('Moves', { Entry: 'x', Quantity: Number.NaN }),
      () => undefined,
      /Quantity for Moves is not a number/,
    ],
    [
      'a text no cell can hold',
      one('Moves', { Entry: 'x', Note: 'x'.repeat(32_768) }),
      () => undefined,
      /Note for Moves is longer than/,
    ],
  ])('%s', async (_, change, arrange, sentence) => {
    const { model, port } = open();
    arrange(model);
    const before = model.contents();
    const answer = await port.apply(change);
    expect(answer).toEqual({
      kind: 'refused',
      sentence: expect.stringMatching(sentence) as string,
    });
    expect(model.contents()).toBe(before);
  });
});

import { describe, expect, it } from 'vitest';
import type { Change } from '../../../src/workbook/port.ts';
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

describe('refusing before anything is written', () => {
  it.each<[string, (model: WorkbookModel) => void, RegExp]>([
    [
      'a table that is gone',
      (model) => model.removeTable('Moves'),
      /no table named Moves.*Put it back/,
    ],
    [
      'a protected sheet',
      (model) => void (model.sheet('Batches sheet').protected = true),
      /"Batches sheet" is protected.*Unprotect/,
    ],
    [
      'a missing id column',
      (model) => model.table('Moves').sheet.put(0, 0, 'Id'),
      /no column "Entry"/,
    ],
  ])('%s', async (_, arrange, sentence) => {
    const { model, port } = open();
    arrange(model);
    const before = model.contents();
    expect(await port.apply(post(1))).toEqual({
      kind: 'refused',
      sentence: expect.stringMatching(sentence) as string,
    });
    expect(model.contents()).toBe(before);
  });
});

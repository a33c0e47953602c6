import { describe, expect, it } from 'vitest';
import type { Change } from '../../../src/workbook/port.ts';
import { demoBook, portOver, post, setUp } from './fake/demo-book.ts';
import { FakeClient } from './fake/fake-client.ts';
import type { WorkbookModel } from './fake/workbook-model.ts';

const rowsOf = (model: WorkbookModel, table: string) => model.table(table).rows;
const contents = (model: WorkbookModel): string => JSON.stringify(model.tables);

describe('writing a change', () => {
  it('sets cells, adds rows by header at the end, and has dependents worked out', async () => {
    const { model, port } = setUp();
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
    expect(model.recalculated).toEqual(['Recalculate']);
  });

  it.each([1, 10, 100, 1000])('takes five syncs for a batch of %i moves', async (moves) => {
    const { client, port } = setUp();
    await port.apply(post(moves));
    expect(client.syncs).toBe(5);
  });

  it('takes four syncs where no row stands already', async () => {
    const { client, port } = setUp();
    await port.apply({ ...post(10), updates: [] });
    expect(client.syncs).toBe(4);
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
    const { model, port } = setUp();
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
    const { model, port } = setUp();
    await port.apply(post(3));
    const once = contents(model);
    expect(await port.apply(post(3))).toEqual({ kind: 'already there' });
    expect(contents(model)).toBe(once);
  });

  it('adds only the rows that are missing', async () => {
    const { model, port } = setUp();
    await port.apply(post(3));
    rowsOf(model, 'Moves').splice(2, 1);
    expect(await port.apply(post(3))).toEqual({ kind: 'applied' });
    const ids = rowsOf(model, 'Moves').map(([id]) => id);
    expect(ids).toEqual(['m1', 'p-0', 'p-2', 'p-1']);
  });

  it('refuses where an id stands with other cells, and names it', async () => {
    const { model, port } = setUp();
    await port.apply(post(3));
    const moves = rowsOf(model, 'Moves');
    if (moves[2] !== undefined) moves[2][3] = -99;
    const before = contents(model);
    expect(await port.apply(post(3))).toEqual({
      kind: 'refused',
      sentence: expect.stringContaining('different row with Entry "p-1"') as string,
    });
    expect(contents(model)).toBe(before);
  });

  it('finds an id that is a number in the sheet', async () => {
    const { model, port } = setUp();
    model.addRows('Batches', [[17, 'made', 5, 10]]);
    const set = { State: 'undone' };
    await port.apply({
      appends: [],
      updates: [{ table: 'Batches', idColumn: 'Batch', id: '17', set }],
    });
    expect(rowsOf(model, 'Batches').at(-1)?.[1]).toBe('undone');
  });

  it('answers already there for a cell that is set already', async () => {
    const { client, port } = setUp();
    const change: Change = {
      appends: [],
      updates: [{ table: 'batches', idColumn: 'BATCH', id: 'b1', set: { state: 'made' } }],
    };
    expect(await port.apply(change)).toEqual({ kind: 'already there' });
    expect(client.syncs).toBe(4);
  });
});

describe('a partner in the same workbook', () => {
  it('does not get in the way by adding a row between reading and writing', async () => {
    const { model, client, port } = setUp();
    client.beforeSync = (sync) => {
      if (sync === 5) model.addRows('Moves', [['partner', 46_001, 'Clear base', -1, '']]);
    };
    expect((await port.apply(post(2))).kind).toBe('applied');
    expect(rowsOf(model, 'Moves').map(([id]) => id)).toEqual(['m1', 'partner', 'p-0', 'p-1']);
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
      (model) => void model.tables.splice(1, 1),
      /no table named Moves.*Table Name/,
    ],
    [
      'a protected sheet',
      post(1),
      (model) => void model.protectedSheets.add('Batches sheet'),
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
      (model) => void (model.table('Moves').headers[0] = 'Id'),
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
      (model) => model.addRows('Batches', [['b1', 'made', 1, 2]]),
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
    const { model, port } = setUp();
    arrange(model);
    const before = contents(model);
    const answer = await port.apply(change);
    expect(answer).toEqual({
      kind: 'refused',
      sentence: expect.stringMatching(sentence) as string,
    });
    expect(contents(model)).toBe(before);
  });
});

describe('a fault at every operation of every sync', () => {
  const whole = contents(written());
  const none = contents(demoBook());

  it('leaves the whole batch or none of it, and posting again never doubles it', async () => {
    const counted = new FakeClient(demoBook());
    await portOver(counted).apply(post(3));
    let struck = 0;
    for (const [index, operations] of counted.traffic.entries()) {
      for (let after = 0; after <= operations; after += 1) {
        const client = new FakeClient(demoBook());
        client.faults = [{ sync: index + 1, after, code: 'RequestAborted' }];
        const port = portOver(client);
        const answer = await port.apply(post(3));
        const now = contents(client.model);
        expect(now, `sync ${index + 1}, operation ${after}`).toBe(
          answer.kind === 'refused' ? none : whole,
        );
        expect((await port.apply(post(3))).kind).not.toBe('refused');
        expect(contents(client.model)).toBe(whole);
        struck += 1;
      }
    }
    // Five syncs, and the last carries one cell, two tables' rows and the recalculation.
    expect(counted.traffic).toHaveLength(5);
    expect(struck).toBe(counted.traffic.reduce((sum, count) => sum + count + 1, 0));
  });

  it('says that it does not know when looking again fails too, and trying again is safe', async () => {
    const client = new FakeClient(demoBook());
    client.faults = [
      { sync: 5, after: 2, code: 'RequestAborted' },
      { sync: 6, after: 0, code: 'ServiceNotAvailable' },
    ];
    const port = portOver(client);
    expect(await port.apply(post(3))).toEqual({
      kind: 'refused',
      sentence: expect.stringMatching(
        /did not say whether a part was kept.*never written twice/,
      ) as string,
    });
    expect(await port.apply(post(3))).toEqual({ kind: 'applied' });
    expect(contents(client.model)).toBe(whole);
  });
});

/** The demo book with the batch of three moves written by hand, as the contract has it. */
function written(): WorkbookModel {
  const model = demoBook();
  model
    .table('Moves')
    .rows.push(
      ...[0, 1, 2].map((index) => [`p-${index}`, 46_001, 'Clear base', -1.1 * (index + 1), '']),
    );
  const batches = model.table('Batches').rows;
  if (batches[0] !== undefined) batches[0][1] = 'sold out';
  batches.push(['b2', 'made', 12, 'worked out']);
  return model;
}

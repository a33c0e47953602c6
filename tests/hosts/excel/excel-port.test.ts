import { describe, expect, it } from 'vitest';
import { healBook } from '../../../src/hosts/excel/heal-book.ts';
import { passingStore } from '../../../src/hosts/excel/workbook-memory.ts';
import { demoBook, portOver, post, setUp } from './fake/demo-book.ts';
import { FakeClient } from './fake/fake-client.ts';
import { HostFault, WorkbookModel } from './fake/workbook-model.ts';

describe('reading', () => {
  it('reads every table with its headers and cells in two syncs', async () => {
    const { client, port } = setUp();
    const tables = await port.load();
    expect(tables.map(({ name }) => name)).toEqual(['Materials', 'Moves', 'Batches']);
    expect(tables[1]).toEqual({
      name: 'Moves',
      headers: [' entry', 'When', 'Material', 'Quantity', 'Note'],
      rows: [['m1', 46_000, 'Clear base', -250, '']],
    });
    expect(client.syncs).toBe(2);
  });

  it.each([
    [1_000, 2],
    [30_000, 2],
    // 150,000 cells a sync, five columns: the fourth part is begun at row 90,001.
    [90_001, 5],
  ])('reads %i moves whole, in order, in %i syncs', async (rows, syncs) => {
    const model = new WorkbookModel().addTable(
      'Moves',
      ['Entry', 'When', 'Material', 'Quantity', 'Note'],
      Array.from({ length: rows }, (_, row) => [`m${row}`, 46_000, 'Clear base', row, '']),
    );
    const client = new FakeClient(model);
    const [moves] = await portOver(client).load();
    expect(moves?.rows).toEqual(model.tables[0]?.rows);
    expect(client.syncs).toBe(syncs);
  });

  it('passes over a table without a header row and answers an empty one', async () => {
    const model = new WorkbookModel()
      .addTable('Bare', ['Column1'], [['x']], { showHeaders: false })
      .addTable('Plan', ['Plan line', 'Design'], []);
    expect(await portOver(new FakeClient(model)).load()).toEqual([
      { name: 'Plan', headers: ['Plan line', 'Design'], rows: [] },
    ]);
  });

  it('rejects with a sentence when a cell is being edited', async () => {
    const { client, port } = setUp();
    client.faults = [{ sync: 1, after: 0, code: 'InvalidOperationInCellEditMode' }];
    await expect(port.load()).rejects.toThrow(/A cell is being edited.*Press Enter or Esc/);
  });
});

describe('the fake client itself', () => {
  it('refuses a property that was not loaded and synced, as the real one does', async () => {
    const client = new FakeClient(demoBook());
    const early = client.run(async (context) => {
      context.workbook.tables.load('items/name');
      return Promise.resolve(context.workbook.tables.items.length);
    });
    await expect(early).rejects.toThrow(HostFault);
    const other = client.run(async (context) => {
      context.workbook.tables.load('items/name');
      await context.sync();
      return context.workbook.tables.items[0]?.showHeaders;
    });
    await expect(other).rejects.toThrow('PropertyNotLoaded');
  });
});

describe('noticing changes', () => {
  it('calls back after any table changes until it is stopped', async () => {
    const { model, port } = setUp();
    let heard = 0;
    const stop = port.onChange(() => (heard += 1));
    await settled();
    model.setCell('Moves', 0, 3, -260);
    expect(heard).toBe(1);
    stop();
    model.setCell('Moves', 0, 3, -270);
    expect(heard).toBe(1);
    await settled();
    expect(model.listeners.size).toBe(0);
  });

  it('says so when Excel does not take the listener', async () => {
    const sentences: string[] = [];
    const { client, port } = setUp({ onDeaf: (sentence) => sentences.push(sentence) });
    client.faults = [{ sync: 1, after: 0, code: 'ApiNotFound' }];
    port.onChange(() => undefined);
    await settled();
    expect(sentences).toEqual([expect.stringContaining('Update Excel')]);
  });
});

describe('healing after reopening', () => {
  it('has the cell named Book worked out again, then its dependents, in two syncs', async () => {
    const client = new FakeClient(demoBook());
    expect(await healBook(client.run)).toBe(true);
    expect(client.model.recalculated).toEqual(['Book', 'Recalculate']);
    expect(client.syncs).toBe(2);
  });

  it('leaves a workbook without that name alone', async () => {
    const client = new FakeClient(new WorkbookModel());
    expect(await healBook(client.run)).toBe(false);
    expect(client.model.recalculated).toEqual([]);
  });
});

describe('the small things', () => {
  it('tells today by the maker’s own clock', () => {
    expect(setUp().port.today()).toBe('2026-11-05');
  });

  it('draws tokens of 50 bits from 32 letters', () => {
    const { port } = setUp();
    const tokens = Array.from({ length: 1000 }, () => port.newToken());
    expect(new Set(tokens).size).toBe(1000);
    for (const token of tokens) expect(token).toMatch(/^[0-9a-hjkmnp-tv-z]{10}$/);
  });

  it('remembers texts apart for each workbook', () => {
    const store = passingStore();
    const client = new FakeClient(demoBook());
    const one = portOver(client, { store, workbookKey: 'one' }).memory;
    const two = portOver(client, { store, workbookKey: 'two' }).memory;
    one.set('flow', 'weighing');
    expect([one.get('flow'), two.get('flow')]).toEqual(['weighing', undefined]);
    one.delete('flow');
    expect(one.get('flow')).toBeUndefined();
  });

  it('refuses to write into a workbook opened read-only', async () => {
    const { client, port } = setUp({ isReadOnly: () => true });
    expect(await port.apply(post(1))).toEqual({
      kind: 'refused',
      sentence: expect.stringContaining('read-only') as string,
    });
    expect(client.syncs).toBe(0);
  });
});

/** Lets promises that are already due run. */
const settled = async (): Promise<void> => {
  for (let turn = 0; turn < 20; turn += 1) await Promise.resolve();
};

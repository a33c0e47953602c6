import { describe, expect, it } from 'vitest';
import { passingStore } from '../../../src/hosts/excel/passing-store.ts';
import { post } from './host/demo-book.ts';
import { WIRE } from './host/excel-host.ts';
import { open, untilAllIsStill } from './host/open.ts';
import { WorkbookModel } from './host/workbook-model.ts';

describe('showing', () => {
  it('selects the cell under a header, below the headers as many rows as told', async () => {
    const { host, port } = open();
    await port.show({ table: 'Moves', row: 1, header: 'quantity' });
    const { sheet, place } = host.model.table('Moves');
    const { row, column } = place;
    const cell = { sheet: sheet.name, row: row + 1, height: 1, width: 1 };
    expect(host.model.selected).toEqual({ ...cell, column: column + 3 });
    await port.show({ table: 'Moves', row: 1 });
    expect(host.model.selected).toEqual({ ...cell, column });
  });

  it('rejects with a sentence where the table has gone', async () => {
    await expect(open().port.show({ table: 'Nowhere', row: 1 })).rejects.toThrow(/\.$/u);
  });
});

describe('reading', () => {
  it('reads every table with its headers and cells in two syncs', async () => {
    const { host, port } = open();
    const tables = await port.load();
    expect(tables.map(({ name }) => name)).toEqual(['Materials', 'Moves', 'Batches']);
    expect(tables[1]).toEqual({
      name: 'Moves',
      on: { sheet: 'Moves sheet', headerRow: 1 },
      headers: [' entry', 'When', 'Material', 'Quantity', 'Note'],
      rows: [['m1', 46_000, 'Clear base', -250, '']],
    });
    expect(host.syncs).toBe(2);
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
    const { host, port } = open(model);
    const [moves] = await port.load();
    expect(moves?.rows).toEqual(model.table('Moves').rows);
    expect(host.syncs).toBe(syncs);
  });

  it('reads a table with long notes in smaller parts, where Excel hands over no more at once', async () => {
    const note = 'x'.repeat(400);
    const rows = Array.from({ length: 20_000 }, (_, row) => [`m${row}`, row, note]);
    const { host, port } = open(
      new WorkbookModel().addTable('Moves', ['Entry', 'When', 'Note'], rows),
    );
    expect((await port.load())[0]?.rows).toEqual(rows);
    // Names and 60,000 cells: too large. Then names and four parts of 18,750 cells or less.
    expect(host.syncs).toBe(2 + 5);
  });

  it('passes over a table without a header row and answers an empty one', async () => {
    const model = new WorkbookModel()
      .addTable('Bare', ['Column1'], [['x']], { showHeaders: false })
      .addTable('Plan', ['Plan line', 'Design'], []);
    expect(await open(model).port.load()).toEqual([
      {
        name: 'Plan',
        on: { sheet: 'Plan sheet', headerRow: 1 },
        headers: ['Plan line', 'Design'],
        rows: [],
      },
    ]);
  });

  it('rejects with a sentence when a cell is being edited', async () => {
    const { host, port } = open();
    host.model.cellBeingEdited = true;
    await expect(port.load()).rejects.toThrow(/A cell is being edited.*Press Enter or Esc/);
  });
});

describe('names', () => {
  it('that lead nowhere any more are told in one sync', async () => {
    const { model, host, port } = open();
    model.names.set('Old prices', '=#REF!').set('Rate', '=0.2');
    expect(await port.brokenNames()).toEqual(['Old prices']);
    expect(host.syncs).toBe(1);
  });

  it('that Excel does not tell reject with a sentence', async () => {
    const { host, port } = open();
    host.faults = [{ sync: 1, wire: WIRE.throttled }];
    await expect(port.brokenNames()).rejects.toThrow(/too many requests.*try again/);
  });
});

describe('noticing changes', () => {
  it('calls back after any table changes until it is stopped', async () => {
    const { model, host, port } = open();
    let heard = 0;
    const stop = port.onChange(() => (heard += 1));
    await untilAllIsStill();
    model.table('Moves').setCell(0, 3, -260);
    await untilAllIsStill();
    expect(heard).toBe(1);
    stop();
    model.table('Moves').setCell(0, 3, -270);
    await untilAllIsStill();
    expect(heard).toBe(1);
    expect(host.registered.size).toBe(0);
  });

  it('says so when Excel does not take the listener', async () => {
    const sentences: string[] = [];
    const { host, port } = open(undefined, { onDeaf: (sentence) => sentences.push(sentence) });
    host.faults = [{ sync: 1, action: 0, code: 'ApiNotFound' }];
    port.onChange(() => undefined);
    await untilAllIsStill();
    expect(sentences).toEqual([expect.stringContaining('Update Excel')]);
  });
});

describe('the small things', () => {
  it('tells today by the maker’s own clock', () => {
    expect(open().port.today()).toBe('2026-11-05');
  });

  it('draws tokens of 50 bits from 32 letters', () => {
    const { port } = open();
    const tokens = Array.from({ length: 1000 }, () => port.newToken());
    expect(new Set(tokens).size).toBe(1000);
    for (const token of tokens) expect(token).toMatch(/^[0-9a-hjkmnp-tv-z]{10}$/);
  });

  it('remembers texts apart for each workbook', () => {
    const store = passingStore();
    const one = open(undefined, { store, workbookKey: 'one' }).port.memory;
    const two = open(undefined, { store, workbookKey: 'two' }).port.memory;
    one.set('flow', 'weighing');
    expect([one.get('flow'), two.get('flow')]).toEqual(['weighing', undefined]);
    one.delete('flow');
    expect(one.get('flow')).toBeUndefined();
  });

  it('refuses to write into a workbook opened read-only', async () => {
    const { host, port } = open(undefined, { isReadOnly: () => true });
    expect(await port.apply(post(1))).toEqual({
      kind: 'refused',
      sentence: expect.stringContaining('read-only') as string,
    });
    expect(host.syncs).toBe(0);
  });
});

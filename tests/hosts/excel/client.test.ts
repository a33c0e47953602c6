import { describe, expect, it } from 'vitest';
import { FLOWS } from './flows.ts';
import { demoBook } from './host/demo-book.ts';
import { ExcelHost } from './host/excel-host.ts';
import { modelOf } from './host/model-of.ts';
import { officeClient, type Supports } from './host/office-client.ts';
import { open } from './host/open.ts';

const opened = (supports?: Supports) => officeClient(new ExcelHost(demoBook()), supports).Excel;

/** Excel's own requirement sets up to a version, and all others. */
const upTo =
  (newest: string): Supports =>
  (set, version) =>
    set !== 'ExcelApi' || Number(version.split('.')[1]) <= Number(newest.split('.')[1]);

describe('the vendor’s client, over the test’s Excel', () => {
  it('refuses a property that was not loaded and synced', async () => {
    const excel = opened();
    const early = excel.run(async (context) => {
      context.workbook.tables.load('items/name');
      return Promise.resolve(context.workbook.tables.items.length);
    });
    await expect(early).rejects.toMatchObject({ code: 'PropertyNotLoaded' });
    const other = excel.run(async (context) => {
      const tables = context.workbook.tables.load('items/name');
      await context.sync();
      return tables.items[0]?.showHeaders;
    });
    await expect(other).rejects.toMatchObject({ code: 'PropertyNotLoaded' });
  });

  it('refuses a property that there is none of, and a table that is not there', async () => {
    const excel = opened();
    const misspelt = excel.run(async (context) => {
      context.workbook.tables.load('items/nmae');
      await context.sync();
    });
    await expect(misspelt).rejects.toMatchObject({ code: 'InvalidArgument' });
    const absent = excel.run(async (context) => {
      context.workbook.tables.getItem('Sails').load('name');
      await context.sync();
    });
    await expect(absent).rejects.toMatchObject({ code: 'ItemNotFound' });
  });

  it('answers a null object for what is not there, and what is asked of it', async () => {
    const isNull = await opened().run(async (context) => {
      const table = context.workbook.tables.getItemOrNullObject('Sails').load('name');
      const range = table.getDataBodyRange().load('values');
      await context.sync();
      return [table.isNullObject, range.isNullObject];
    });
    expect(isNull).toEqual([true, true]);
  });

  it('holds a range while rows come in above it, and lets it go in the end', async () => {
    const host = new ExcelHost(demoBook());
    const value = await officeClient(host).Excel.run(async (context) => {
      const batches = context.workbook.tables.getItem('Batches');
      const last = batches.getDataBodyRange().getRow(1).load('values');
      await context.sync();
      host.model.table('Batches').insertRow(0, ['b9', 'made', 1, 2]);
      last.load('values');
      await context.sync();
      return (last.values[0] as unknown[])[0];
    });
    expect(value).toBe('b0');
    expect(host.held).toBe(0);
  });

  it('keeps what a batch did before the action that failed', async () => {
    const host = new ExcelHost(demoBook());
    const failing = officeClient(host).Excel.run(async (context) => {
      const { tables } = context.workbook;
      tables.getItem('Moves').rows.add(undefined, [['x', 1, 'Clear base', -1, '']]);
      tables.getItem('Sails').rows.add(undefined, [['x']]);
      await context.sync();
    });
    await expect(failing).rejects.toMatchObject({
      code: 'ItemNotFound',
      debugInfo: expect.objectContaining({
        statement: expect.stringContaining('getItem') as string,
      }) as object,
    });
    expect(host.model.table('Moves').rows).toHaveLength(2);
  });
});

describe('the requirement sets', () => {
  const writing = async (supports: Supports): Promise<string[]> => {
    const said: string[] = [];
    for (const { tables, change } of FLOWS) {
      const model = modelOf(tables);
      const page = officeClient(new ExcelHost(model), supports);
      const { port } = open(model, { onDeaf: (sentence) => said.push(sentence) }, page);
      port.onChange(() => undefined);
      await port.load();
      const applied = await port.apply(change);
      said.push('sentence' in applied ? applied.sentence : applied.kind);
    }
    return said;
  };

  it('that the manifest asks for are enough for all that the pane writes', async () => {
    expect(await writing(upTo('1.9'))).toEqual(FLOWS.map(() => 'applied'));
  });

  it('cannot be lower: the client itself refuses', async () => {
    expect(await writing(upTo('1.8'))).toEqual(
      FLOWS.map(() => expect.stringContaining('too old') as string),
    );
  });
});

import { describe, expect, it } from 'vitest';
import type { Change } from '../../../src/workbook/port.ts';
import { recipe, teal } from '../../support/shared-ids.ts';
import type { Tables } from '../../support/small-book.ts';
import { ExcelHost } from './host/excel-host.ts';
import { modelOf, tablesOf } from './host/model-of.ts';
import { officeClient } from './host/office-client.ts';
import { open } from './host/open.ts';

const page = officeClient(new ExcelHost(modelOf({})));

const set = (nth: number): Change => ({
  appends: [],
  updates: [
    { table: 'Colours', idColumn: 'Colour', id: 'Teal', nth, set: { Colour: 'Teal.2', Amount: 1 } },
  ],
});

async function written(tables: Tables, change: Change) {
  const { model, port } = open(modelOf(tables), {}, page);
  const { kind } = await port.apply(change);
  return [kind, tablesOf(model)['Colours']?.slice(1)];
}

describe('lines that share an id, in Excel', () => {
  const none: Tables = { Colours: [teal.headers, ['Foam', 'Base', 5]] };
  const whole: Tables = { Colours: [teal.headers, ...teal.rows] };

  it('are added together, and are there already the second time', async () => {
    expect(await written(none, recipe(100, 8))).toEqual([
      'applied',
      [['Foam', 'Base', 5], ...teal.rows],
    ]);
    expect(await written(whole, recipe(100, 8))).toEqual(['already there', teal.rows]);
    expect(await written(whole, recipe(100, 9))).toEqual(['refused', teal.rows]);
  });

  it('are set one by one by their place among them', async () => {
    expect(await written(whole, set(1))).toEqual([
      'applied',
      [teal.rows[0], ['Teal.2', 'Blue', 1]],
    ]);
    expect(await written(whole, set(2))).toEqual(['refused', teal.rows]);
  });

  it('are added whole or not at all, whichever sync fails', async () => {
    for (const at of [1, 2, 3, 4, 5]) {
      const { model, host, port } = open(modelOf(none), {}, page);
      host.beforeSync = (sync) => {
        if (sync === at) throw new Error('The connection was lost');
      };
      const said = await port.apply(recipe(100, 8, 2)).catch((problem: unknown) => problem);
      const rows = tablesOf(model)['Colours']?.length;
      const isApplied = (said as { kind?: string }).kind === 'applied';
      expect(rows).toBe(isApplied ? 5 : 2);
    }
  });
});

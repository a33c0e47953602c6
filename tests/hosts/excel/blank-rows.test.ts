import { describe, expect, it } from 'vitest';
import type { Cell, Change } from '../../../src/workbook/port.ts';
import { table, type Tables } from '../../support/small-book.ts';
import { ExcelHost, WIRE } from './host/excel-host.ts';
import { modelOf } from './host/model-of.ts';
import { officeClient } from './host/office-client.ts';
import { open } from './host/open.ts';
import type { WorkbookModel } from './host/workbook-model.ts';

/** One page for all: its client script keeps nothing of a workbook once a run is over. */
const page = officeClient(new ExcelHost(modelOf({})));

const tables: Tables = {
  Moves: table('Entry | Quantity | Note', ['M-1', 1, 'x'], ['', '', ''], ['', '', '']),
};
const change: Change = {
  appends: [
    {
      table: 'Moves',
      idColumn: 'Entry',
      rows: ['M-2', 'M-3', 'M-4'].map((Entry, at) => ({ Entry, Quantity: at })),
    },
  ],
  updates: [],
};
const ours = [
  ['M-2', 0, ''],
  ['M-3', 1, ''],
  ['M-4', 2, ''],
] as const;

const typed =
  (row: number, column: number, cell: Cell) =>
  (model: WorkbookModel): void =>
    model.table('Moves').setCell(row, column, cell);
const entriesOf = (model: WorkbookModel) => model.table('Moves').rows.map(([entry]) => entry);

describe('blank last rows', () => {
  it('are filled in as few actions whatever their number, in five syncs', async () => {
    const { model, host, port } = open(modelOf(tables), {}, page);
    expect(await port.apply(change)).toEqual({ kind: 'applied' });
    expect(model.table('Moves').rows).toEqual([['M-1', 1, 'x'], ...ours]);
    const few = host.traffic;
    const long = open(
      modelOf({ Moves: [...(tables['Moves'] ?? []), ...Array(500).fill(['', '', ''])] }),
      {},
      page,
    );
    const rows = Array.from({ length: 400 }, (_, at) => ({ Entry: `N-${String(at)}` }));
    await long.port.apply({ appends: [{ table: 'Moves', idColumn: 'Entry', rows }], updates: [] });
    expect(long.model.table('Moves').rows).toHaveLength(503);
    expect(few).toHaveLength(5);
    expect(long.host.traffic).toHaveLength(5);
    expect(long.host.traffic[4]).toBeLessThanOrEqual(few[4] ?? 0);
  });

  it.each<[string, (model: WorkbookModel) => void]>([
    ['types into one', typed(1, 2, 'ask Ida')],
    ['types an id into the last', typed(2, 0, 'M-9')],
    ['puts a row in between', (model) => model.table('Moves').insertRow(2, ['M-9', 9, ''])],
    ['sorts', (model) => model.table('Moves').turnRows()],
    ['moves the columns', (model) => model.table('Moves').turnColumns()],
    ['takes one out', (model) => model.table('Moves').deleteRows(1, 1, 'Remote')],
    ['takes them out', (model) => model.table('Moves').deleteRows(1, 2, 'Remote')],
  ])('hold what a partner does just before any sync: %s', async (_, act) => {
    for (const at of [1, 2, 3, 4, 5]) {
      const { model, host, port } = open(modelOf(tables), {}, page);
      const alone = modelOf(tables);
      act(alone);
      host.beforeSync = (sync) => {
        if (sync === at) act(model);
      };
      const { kind } = await port.apply(change);
      host.beforeSync = () => undefined;
      if (kind === 'refused') {
        expect(model.contents(), String(at)).toBe(alone.contents());
        expect(await port.apply(change)).toEqual({ kind: 'applied' });
      }
      const entries = model.table('Moves').rows.flat();
      const theirs = alone.table('Moves').rows.flat();
      expect(theirs.filter((cell) => cell !== '' && !entries.includes(cell))).toEqual([]);
      expect(entries.filter((cell) => /^M-[234]$/.test(String(cell)))).toHaveLength(3);
      expect(await port.apply(change)).toEqual({ kind: 'already there' });
    }
  });

  it('say in full what went over a partner’s cell where it can’t be taken back', async () => {
    const { model, host, port } = open(modelOf(tables), {}, page);
    host.beforeSync = (sync) => {
      if (sync === 5) typed(1, 0, 'M-9')(model);
    };
    host.faults = [{ sync: 6, wire: WIRE.internal }];
    await expect(port.apply(change)).rejects.toThrow(
      'The last rows of Moves were filled or moved just now, perhaps by a partner. New rows went over "M-9", and Excel did not take that back: put that back in the last rows of Moves, then try again.',
    );
    expect(entriesOf(model)).toEqual(['M-1', 'M-2', 'M-3', 'M-4']);
  });

  it('keep a formula of the maker’s own', async () => {
    const { model, port } = open(modelOf(tables), {}, page);
    const { sheet, body } = model.table('Moves');
    sheet.put(body.row + 1, 2, { formula: '=1+1', value: 2 });
    expect(await port.apply(change)).toEqual({ kind: 'applied' });
    expect(model.table('Moves').rows[1]).toEqual(['M-2', 0, 2]);
    expect(sheet.formulas({ row: body.row + 1, column: 2, height: 1, width: 1 })).toEqual([
      ['=1+1'],
    ]);
  });
});

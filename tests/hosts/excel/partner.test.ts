import { describe, expect, it } from 'vitest';
import { applyChange } from '../../support/apply-change.ts';
import { FLOWS, type Flow } from './flows.ts';
import { ExcelHost, WIRE } from './host/excel-host.ts';
import { modelOf, tablesOf } from './host/model-of.ts';
import { officeClient } from './host/office-client.ts';
import { open } from './host/open.ts';
import type { WorkbookModel } from './host/workbook-model.ts';

/** What a partner in the same workbook, or the maker in the sheet, does meanwhile. */
interface Act {
  readonly name: string;
  readonly act: (model: WorkbookModel) => void;
  /** What is said where it was done before anything was read; nothing where it is no obstacle. */
  readonly sentence?: RegExp;
  /** Puts the obstacle away, so that posting again goes through. */
  readonly undo?: (model: WorkbookModel) => void;
}

const rowOf = (model: WorkbookModel, table: string, id: string): string[] =>
  model.table(table).headers.map((_, column) => (column === 0 ? id : ''));

const addsRow = (table: string, at: number): Act => ({
  name: `a row at place ${at} of ${table}`,
  act: (model) => model.table(table).insertRow(at, rowOf(model, table, 'partner')),
});

const ACTS: readonly Act[] = [
  addsRow('LedgerLines', 0),
  addsRow('Batches', 0),
  {
    name: 'a row at the end of LedgerLines',
    act: (model) =>
      model.table('LedgerLines').addRows([rowOf(model, 'LedgerLines', 'partner')], 'Remote'),
  },
  {
    name: 'LedgerLines renamed',
    act: rename('LedgerLines', 'Ledger'),
    sentence: /no table named LedgerLines/,
    undo: rename('Ledger', 'LedgerLines'),
  },
  {
    name: 'the columns of LedgerLines moved',
    act: (model) => model.table('LedgerLines').turnColumns(),
  },
  { name: 'the columns of Batches moved', act: (model) => model.table('Batches').turnColumns() },
  {
    name: 'Batches sorted',
    act: (model) => {
      model.table('Batches').insertRow(0, rowOf(model, 'Batches', 'partner'));
      model.table('Batches').turnRows();
    },
  },
  {
    name: 'the column Note of LedgerLines deleted',
    act: (model) => model.table('LedgerLines').deleteColumn('Note'),
    sentence: /LedgerLines has no column "Note".*Put the column back/,
  },
  {
    name: 'the column State of Batches deleted',
    act: (model) => model.table('Batches').deleteColumn('State'),
    sentence: /Batches has no column "State".*Put the column back/,
  },
  {
    name: 'LedgerLines protected',
    act: protect(true),
    sentence: /"LedgerLines sheet" is protected.*Unprotect/,
    undo: protect(false),
  },
  {
    name: 'LedgerLines filtered',
    act: filter(true),
    sentence: /A filter hides rows of LedgerLines.*Clear it/,
    undo: filter(false),
  },
  {
    name: 'a cell being edited',
    act: (model) => void (model.cellBeingEdited = true),
    sentence: /A cell is being edited/,
    undo: (model) => void (model.cellBeingEdited = false),
  },
  {
    name: 'the workbook turned read-only',
    act: (model) => void (model.readOnly = true),
    sentence: /does not allow changes here/,
    undo: (model) => void (model.readOnly = false),
  },
];

function rename(from: string, to: string): (model: WorkbookModel) => void {
  return (model) => void (model.table(from).name = to);
}

function protect(on: boolean): (model: WorkbookModel) => void {
  return (model) => void (model.sheet('LedgerLines sheet').protected = on);
}

function filter(on: boolean): (model: WorkbookModel) => void {
  return (model) => void (model.table('LedgerLines').filtered = on);
}

/** One page for all: its client script keeps nothing of a workbook once a run is over. */
const page = officeClient(new ExcelHost(modelOf({})));
const flow = FLOWS.find(({ name }) => name === 'undo') as Flow;

/** The tables as they must be in the end: the partner's doing first, and then ours or nothing of it. */
function expected(act: Act, ours: boolean, undo?: Act['undo']): string {
  const model = modelOf(flow.tables);
  act.act(model);
  undo?.(model);
  if (!ours) return model.contents();
  const original = modelOf(flow.tables).tables.map(({ name }) => name);
  const named = <T extends { readonly table: string }>(part: T): T => ({
    ...part,
    table: model.tables[original.indexOf(part.table)]?.name ?? part.table,
  });
  const change = {
    appends: flow.change.appends.map(named),
    updates: flow.change.updates.map(named),
  };
  return modelOf(applyChange(tablesOf(model), change)).contents();
}

describe.each(ACTS)('meanwhile: $name', (act) => {
  it.each([1, 2, 3, 4, 5])('just before sync %i, the batch is whole or not there', async (at) => {
    const { model, host, port } = open(modelOf(flow.tables), {}, page);
    host.beforeSync = (sync) => {
      if (sync === at) act.act(model);
    };
    const said = await port.apply(flow.change).catch((problem: unknown) => problem as Error);
    const isOurs = !(said instanceof Error) && said.kind === 'applied';
    expect(model.contents()).toBe(expected(act, isOurs));
    if (at === 1) {
      const sentence = 'sentence' in said ? said.sentence : '';
      expect(isOurs).toBe(act.sentence === undefined);
      expect(sentence).toMatch(act.sentence ?? /^$/);
    }
    if (isOurs || (act.sentence !== undefined && act.undo === undefined)) return;
    host.beforeSync = () => undefined;
    act.undo?.(model);
    expect(await port.apply(flow.change)).toEqual({ kind: 'applied' });
    expect(model.contents()).toBe(expected(act, true, act.undo));
  });
});

describe('a fault while taking back what went astray', () => {
  it.each([
    [
      'the columns of LedgerLines moved',
      /Columns of LedgerLines were moved.*wrong headers.*: delete the last rows of LedgerLines, then try again/,
    ],
    [
      'Batches sorted',
      /Rows of Batches were sorted.*State of "partner" was set instead of "B1".*: set it back to "", delete the last rows of LedgerLines, then try again/,
    ],
  ])('is said in full, since no one else could tell: %s', async (name, sentence) => {
    const { model, host, port } = open(modelOf(flow.tables), {}, page);
    host.beforeSync = (sync) => {
      if (sync === 5) ACTS.find((act) => act.name === name)?.act(model);
    };
    host.faults = [{ sync: 6, wire: WIRE.internal }];
    await expect(port.apply(flow.change)).rejects.toThrow(sentence);
    expect(host.syncs).toBe(6);
  });
});

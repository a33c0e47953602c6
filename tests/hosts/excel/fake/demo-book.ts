import type { Change } from '../../../../src/workbook/port.ts';
import { type ExcelSurroundings, excelPort } from '../../../../src/hosts/excel/excel-port.ts';
import { passingStore } from '../../../../src/hosts/excel/workbook-memory.ts';
import { FakeClient } from './fake-client.ts';
import { WorkbookModel } from './workbook-model.ts';

/** A small book with two tables that a post writes to and one that it only reads. */
export function demoBook(): WorkbookModel {
  const model = new WorkbookModel();
  model.addTable('Materials', ['Material', 'Kind'], [['Clear base', 'base']]);
  model.addTable(
    'Moves',
    [' entry', 'When', 'Material', 'Quantity', 'Note'],
    [['m1', 46_000, 'Clear base', -250, '']],
  );
  model.addTable(
    'Batches',
    ['Batch', 'State', 'Bars', 'Bars × 2'],
    [
      ['b1', 'made', 12, 24],
      ['b0', 'undone', 6, 12],
    ],
    { calculated: { 'Bars × 2': 'worked out' } },
  );
  model.names.push({ name: 'Book', type: 'Range' });
  return model;
}

/** A batch of `moves` moves and its own line, which also closes batch b1. */
export function post(moves: number): Change {
  return {
    appends: [
      {
        table: 'Moves',
        idColumn: 'Entry',
        rows: Array.from({ length: moves }, (_, index) => ({
          Entry: `p-${index}`,
          When: 46_001,
          Material: 'Clear base',
          Quantity: -1.1 * (index + 1),
        })),
      },
      {
        table: 'Batches',
        idColumn: 'Batch',
        rows: [{ Batch: 'b2', State: 'made', Bars: 12 }],
      },
    ],
    updates: [{ table: 'Batches', idColumn: 'Batch', id: 'b1', set: { State: 'sold out' } }],
  };
}

/** The port over a fake client, with what a test wants to differ. */
export function portOver(client: FakeClient, around: Partial<ExcelSurroundings> = {}) {
  return excelPort({
    run: client.run,
    workbookKey: 'a workbook',
    store: passingStore(),
    isReadOnly: () => false,
    now: () => new Date(2026, 10, 5, 23, 59),
    onDeaf: (sentence) => {
      throw new Error(sentence);
    },
    ...around,
  });
}

/** A fresh book, its client and its port. */
export function setUp(around: Partial<ExcelSurroundings> = {}) {
  const model = demoBook();
  const client = new FakeClient(model);
  return { model, client, port: portOver(client, around) };
}

import type { Change } from '../../../../src/workbook/port.ts';
import { WorkbookModel } from './workbook-model.ts';

/** A small book with two tables that a post writes to and one that it only reads. */
export function demoBook(): WorkbookModel {
  const model = new WorkbookModel();
  model
    .addTable('Materials', ['Material', 'Kind'], [['Clear base', 'base']])
    .addTable(
      'Moves',
      [' entry', 'When', 'Material', 'Quantity', 'Note'],
      [['m1', 46_000, 'Clear base', -250, '']],
    )
    .addTable(
      'Batches',
      ['Batch', 'State', 'Bars', 'Bars × 2'],
      [
        ['b1', 'made', 12, 24],
        ['b0', 'undone', 6, 12],
      ],
    );
  model.table('Batches').calculated = { 'Bars × 2': 'worked out' };
  const start = model.sheet('Start');
  const place = model.calculation.put(start, 0, 0, '=POUR.BOOK(Materials[#All])', 'a handle');
  model.names.set('Book', { sheet: start, place });
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

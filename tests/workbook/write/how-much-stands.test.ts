import { describe, expect, it } from 'vitest';
import type { Change, TableData } from '../../../src/workbook/port.ts';
import { howMuchStands } from '../../../src/workbook/write/how-much-stands.ts';
import { recipe, teal } from '../../support/shared-ids.ts';

const moves = (...rows: TableData['rows']): TableData => ({
  name: 'Moves',
  headers: ['Entry', 'Quantity'],
  rows,
});
const batches = (state: string): TableData => ({
  name: 'Batches',
  headers: ['Batch', 'State'],
  rows: [['B-1', state]],
});
const change: Change = {
  appends: [{ table: 'Moves', idColumn: 'Entry', rows: [{ Entry: 'M-1' }, { Entry: '17' }] }],
  updates: [{ table: 'Batches', idColumn: 'Batch', id: 'b-1', set: { State: 'undone' } }],
};

describe('howMuchStands', () => {
  it.each([
    ['nothing', [moves(), batches('made')], 'none'],
    ['one row of two', [moves(['m-1 ', 3]), batches('made')], 'part'],
    ['the cell alone', [moves(), batches('undone')], 'part'],
    ['an id kept as a number', [moves(['M-1', 3], [17, 1]), batches('undone')], 'all'],
    ['all rows, and a cell set since', [moves(['M-1', 3], [17, 1]), batches('made')], 'all'],
    ['a table that is gone', [moves(['M-1', 3])], 'part'],
    ['no table at all', [], 'none'],
  ] as const)('%s', (_, tables, stands) => {
    expect(howMuchStands(change, tables)).toBe(stands);
  });

  it('tells lines that share an id by their order', () => {
    const colours = [{ name: 'Colours', headers: teal.headers, rows: teal.rows }];
    expect(howMuchStands(recipe(100, 8), colours)).toBe('all');
    expect(howMuchStands(recipe(100, 8, 1), colours)).toBe('part');
  });

  it('takes a row to clear for cleared once no row bears its id', () => {
    const removals = [
      { table: 'Moves', idColumn: 'Entry', id: 'M-1', was: { Entry: 'M-1', Quantity: 3 } },
    ];
    const clearing = { appends: [], updates: [], removals };
    expect(howMuchStands(clearing, [moves(['M-1', 3])])).toBe('none');
    expect(howMuchStands(clearing, [moves(['M-1', ''])])).toBe('part');
    expect(howMuchStands(clearing, [moves(['', ''])])).toBe('all');
  });
});

import { expect, it } from 'vitest';
import { joinEdits } from '../../../src/hosts/workbench/page/join-edits.ts';

const cell = (row: number, column: number, value: number) => ({ row, column, value });
const table = (name: string, endRow: number) => ({
  name,
  range: { startRow: 0, startColumn: 0, endRow, endColumn: 1 },
  headers: ['a', 'b'],
});

it('keeps every cell and table once, the later one where both write it', () => {
  const first = [
    { sheet: 'A', cells: [cell(0, 0, 1), cell(0, 1, 2)], tables: [table('T', 3)] },
    { sheet: 'B', cells: [cell(0, 0, 3)], tables: [] },
  ];
  const later = [
    { sheet: 'C', cells: [cell(0, 0, 4)], tables: [] },
    { sheet: 'A', cells: [cell(0, 1, 5), cell(1, 0, 6)], tables: [table('T', 4), table('U', 9)] },
  ];
  expect(joinEdits(first, later)).toEqual([
    {
      sheet: 'A',
      cells: [cell(0, 0, 1), cell(0, 1, 5), cell(1, 0, 6)],
      tables: [table('T', 4), table('U', 9)],
    },
    { sheet: 'B', cells: [cell(0, 0, 3)], tables: [] },
    { sheet: 'C', cells: [cell(0, 0, 4)], tables: [] },
  ]);
});

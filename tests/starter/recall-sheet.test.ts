import { expect, it } from 'vitest';
import type { Workings } from '../../src/starter/cells/formula.ts';
import { recallSheet } from '../../src/starter/sheets/recall-sheet.ts';
import { holdsFormula } from '../../src/starter/cells/sheet.ts';
import { tableData } from '../../src/starter/blocks/table-rows.ts';

const lots = tableData('lots', [
  {
    lot: 'L-1',
    material: 'Clear base',
    received: 46_000,
    quantity: 1,
    paid: 1,
    bestBefore: 46_700,
  },
  { lot: 'L-2', material: 'Box', received: 46_000, quantity: 1, paid: 1 },
]);

/** What stands beside "Best before" where a lot is asked. */
function bestBefore(lot: string): unknown {
  const { cells } = recallSheet(lot);
  const label = cells.find(({ holds }) => holds === 'Best before');
  const beside = cells.find(({ row, column }) => row === label?.row && column === label.column + 1);
  if (beside === undefined || !holdsFormula(beside.holds)) throw new Error('No answer beside it.');
  const asked = cells.find(({ look }) => look.role === 'input');
  const from = {
    cell: (row: number, column: number) =>
      row === asked?.row && column === asked.column ? lot : '',
    table: () => [lots.headers, ...lots.rows],
  };
  return beside.holds.work(from as unknown as Workings);
}

it('Recall leaves the best before of a lot that has none blank, not a day of 1900', () => {
  expect(bestBefore('L-1')).toBe(46_700);
  expect(bestBefore('L-2')).toBe('');
  expect(bestBefore('')).toBe('');
});

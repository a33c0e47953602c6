import ExcelJS from 'exceljs';
import { describe, expect, it } from 'vitest';
import { describeStarter } from '../../src/hosts/starter/describe-starter.ts';
import type { Cell } from '../../src/workbook/port.ts';
import { demoWorkbook } from '../../src/workbook/starter/starter-workbook.ts';
import { inProject } from './built.ts';

/** By sheet, row and column from 0: what a cell of ours was worked out to be, when the file was built. */
function workedOut(): Map<string, Cell> {
  const { sheets } = describeStarter(demoWorkbook(), 'any');
  return new Map(
    sheets.flatMap(({ name, cells = [] }) =>
      cells
        .filter(({ formula }) => formula?.includes('POUR.'))
        .map(({ row, column, value }) => [`${name} ${row} ${column}`, value ?? ''] as const),
    ),
  );
}

/** By the same places: what another library finds in the built file, with no function of ours at hand. */
async function kept(): Promise<Map<string, unknown>> {
  const workbook = new ExcelJS.Workbook();
  await workbook.xlsx.readFile(inProject('dist/pour-ledger.xlsx'));
  const found = new Map<string, unknown>();
  workbook.eachSheet((sheet) =>
    sheet.eachRow((row) =>
      row.eachCell((cell) => {
        // "" in a formula's cell is read as nothing.
        const place = `${sheet.name} ${Number(cell.row) - 1} ${Number(cell.col) - 1}`;
        if (/_POUR_/.test(cell.formula ?? '')) found.set(place, cell.result ?? '');
      }),
    ),
  );
  return found;
}

describe('the starter workbook opened by someone without the add-in', () => {
  it('keeps the last value of every cell that asks one of our functions', async () => {
    const [wanted, found] = [workedOut(), await kept()];
    expect(wanted.size).toBeGreaterThan(500);
    expect(found.size).toBe(wanted.size);
    for (const [place, value] of wanted) {
      if (typeof value === 'number') expect(found.get(place), place).toBeCloseTo(value, 9);
      else expect(found.get(place), place).toEqual(value);
    }
  });

  it('shows no cell error anywhere', async () => {
    for (const [place, value] of await kept()) {
      expect(['string', 'number', 'boolean'], place).toContain(typeof value);
      expect(String(value), place).not.toMatch(/^#/);
    }
  });
});

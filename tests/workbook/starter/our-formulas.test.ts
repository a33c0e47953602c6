import { beforeAll, describe, expect, it } from 'vitest';
import { asIfOn } from '../../../functions/clock.ts';
import type { NewCell } from '../../../src/hosts/xlsx/write/new-workbook.ts';
import { demoDay } from '../../../src/workbook/starter/demo/season.ts';
import { type Built, build, variants } from './built.ts';
import { CellError, readFormula, type Sheets, shownIn } from './formula-reader.ts';

/** Every cell that asks one of our functions, in each variant, worked out anew from its text. */
describe.each(variants)('our functions in the %s workbook', (name, make) => {
  let built: Built;
  let sheets: Sheets;
  let asked: { sheet: string; cell: NewCell }[];
  beforeAll(() => {
    built = build(make);
    asked = built.described.sheets.flatMap((sheet) =>
      (sheet.cells ?? [])
        .filter(({ formula }) => formula?.includes('POUR.'))
        .map((cell) => ({ sheet: sheet.name, cell })),
    );
    const handle = asked.find(({ cell }) => cell.formula?.startsWith('=POUR.BOOK('))?.cell.value;
    sheets = shownIn(built.described, built.starter.tables, handle ?? '');
  });

  it('answer what the file shows, cell by cell', () => {
    expect(asked.length).toBeGreaterThan(150);
    asIfOn(demoDay, () => {
      for (const { sheet, cell } of asked) {
        const found = readFormula(cell.formula ?? '', sheet, sheets);
        const where = `${sheet} ${String(cell.row)},${String(cell.column)} ${cell.formula ?? ''}`;
        const value = found instanceof CellError ? found.code : found;
        if (typeof cell.value === 'number' && cell.spill === undefined) {
          expect(value, where).toBeCloseTo(cell.value, 9);
        } else expect(value, where).toEqual(cell.spill ?? cell.value);
      }
    });
  });

  it('are asked for by every family the workbook shows', () => {
    const ids = new Set(
      asked.flatMap(({ cell }) =>
        [...(cell.formula ?? '').matchAll(/POUR\.([A-Z]+)\(/gu)].map((match) => match[1]),
      ),
    );
    const families = [
      ...['BOOK', 'WEIGHOUT', 'TAKEOUT', 'CANMAKE', 'COSTPERBAR', 'COSTLINES', 'STOCKLIST'],
      ...['SERVICECHECK'],
      ...['PRICE', 'BREAKEVEN', 'FAIR', 'BATCHCOST', 'FORECAST', 'SUPPLIES', 'CALENDAR'],
      ...['CASHBYWEEK', 'PLANNOTES', 'TODAY'],
      ...['ONHAND', 'UNITCOST', 'BASEPERMOLD', 'INGREDIENTS', 'CHECKS', 'TRACE', 'TILECOUNT'],
    ];
    for (const family of families) expect(ids, `${name}: ${family}`).toContain(family);
  });
});

import type ExcelJS from 'exceljs';
import { beforeAll, describe, expect, it } from 'vitest';
import type { NewCell, NewWorkbook } from '../../src/xlsx/write/new-workbook.ts';
import { writeWorkbook } from '../../src/xlsx/write/write-workbook.ts';
import { byExcelJs, calculatedAnew, soffice } from '../xlsx/support.ts';
import { build, variants } from './built.ts';

/**
 * The formulas that are no functions of ours are worked out twice: by us for the file, and by
 * LibreOffice, which is made to calculate everything anew with our functions' answers as plain cells.
 */
describe.skipIf(soffice === undefined).each(variants)(
  'native formulas of the %s workbook',
  (_name, make) => {
    const { described } = build(make);
    let recalculated: ExcelJS.Workbook;
    beforeAll(async () => {
      recalculated = await byExcelJs(calculatedAnew(writeWorkbook(withoutAnswers(described))));
    });

    it('come out in LibreOffice as the file shows them', () => {
      const native = described.sheets.flatMap((sheet) =>
        (sheet.cells ?? []).filter(isNative).map((cell) => ({ sheet: sheet.name, cell })),
      );
      expect(native.length).toBeGreaterThan(100);
      for (const { sheet, cell } of native) {
        const found = recalculated.getWorksheet(sheet)?.getCell(cell.row + 1, cell.column + 1);
        const value = asStored(found?.result);
        const where = `${sheet}!${String(found?.address)} ${cell.formula ?? ''}`;
        if (typeof cell.value === 'number') expect(value, where).toBeCloseTo(cell.value, 9);
        else expect(value, where).toBe(cell.value);
      }
    });
  },
);

/** exceljs gives dates as such; a cell holds a number. */
const asStored = (result: unknown): unknown =>
  result instanceof Date ? result.getTime() / 86_400_000 + 25_569 : (result ?? '');

const isNative = ({ formula }: NewCell): boolean =>
  formula !== undefined && !formula.includes('POUR.');

/** Our functions' answers as plain cells; every other formula with a wrong answer to be put right. */
function withoutAnswers(book: NewWorkbook): NewWorkbook {
  return {
    ...book,
    sheets: book.sheets.map((sheet) => ({
      ...sheet,
      cells: (sheet.cells ?? []).flatMap((cell) => {
        if (isNative(cell)) return [{ ...cell, value: 'not calculated' }];
        const rows = cell.formula === undefined ? [[cell.value]] : (cell.spill ?? [[cell.value]]);
        return rows.flatMap((values, down) =>
          values.map((value, right): NewCell => {
            const place = { row: cell.row + down, column: cell.column + right, value };
            const isFirst = down === 0 && right === 0;
            return isFirst && cell.style ? { ...place, style: cell.style } : place;
          }),
        );
      }),
    })),
  };
}

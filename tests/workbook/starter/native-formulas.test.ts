import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import ExcelJS from 'exceljs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { NewCell, NewWorkbook } from '../../../src/hosts/xlsx/write/new-workbook.ts';
import { writeWorkbook } from '../../../src/hosts/xlsx/write/write-workbook.ts';
import { demoDay } from '../../../src/workbook/starter/demo/season.ts';
import { build, variants } from './built.ts';

const office = ['/usr/bin/soffice', '/usr/bin/libreoffice'].find((path) => existsSync(path));

/**
 * The formulas that are no functions of ours are worked out twice: by us for the file, and by
 * LibreOffice, which is made to calculate everything anew with our functions' answers as plain cells.
 */
describe.skipIf(office === undefined).each(variants)(
  'native formulas of the %s workbook',
  (name, make) => {
    const folder = mkdtempSync(join(tmpdir(), 'pour-starter-'));
    const recalculated = new ExcelJS.Workbook();
    const { described } = build(make);
    beforeAll(async () => {
      const file = join(folder, `${name}.xlsx`);
      writeFileSync(file, writeWorkbook(withoutAnswers(described)));
      calculateAnew(file, join(folder, 'out'), join(folder, 'profile'));
      await recalculated.xlsx.readFile(join(folder, 'out', `${name}.xlsx`));
    });
    afterAll(() => {
      rmSync(folder, { recursive: true, force: true });
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

/** The file's numbers are those of the demo's own day. */
const onDemoDay = (cell: NewCell): NewCell => ({
  ...cell,
  formula: (cell.formula ?? '').replaceAll('TODAY()', String(demoDay)),
});

/** Our functions' answers as plain cells; every other formula with a wrong answer to be put right. */
function withoutAnswers(book: NewWorkbook): NewWorkbook {
  return {
    ...book,
    sheets: book.sheets.map((sheet) => ({
      ...sheet,
      cells: (sheet.cells ?? []).flatMap((cell) => {
        if (isNative(cell)) return [{ ...onDemoDay(cell), value: 'not calculated' }];
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

function calculateAnew(file: string, out: string, profile: string): void {
  mkdirSync(join(profile, 'user'), { recursive: true });
  // 0 = always recalculate on load, whichever program wrote the file.
  writeFileSync(
    join(profile, 'user', 'registrymodifications.xcu'),
    '<?xml version="1.0" encoding="UTF-8"?><oor:items xmlns:oor="http://openoffice.org/2001/registry"><item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item></oor:items>',
  );
  execFileSync(
    office ?? '',
    [
      `-env:UserInstallation=${pathToFileURL(profile).href}`,
      '--headless',
      '--convert-to',
      'xlsx:Calc MS Excel 2007 XML',
      '--outdir',
      out,
      file,
    ],
    { stdio: 'ignore', timeout: 110_000 },
  );
}

import ExcelJS from 'exceljs';
import { describe, expect, it } from 'vitest';
import type { SheetEdits } from '../../src/xlsx/image.ts';
import { writeWorkbook } from '../../src/xlsx/write/write-workbook.ts';
import { sample } from './sample.ts';
import {
  byExcelJs,
  byLibreOffice,
  cellAt,
  differingParts,
  edits,
  imageOf,
  partsOf,
  patchedBytes,
  soffice,
} from './support.ts';

const PIXEL =
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==';

/** A workbook by another library, with much that the workbench cannot show. */
async function foreign(): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook();
  const stock = book.addWorksheet('Stock', { views: [{ state: 'frozen', ySplit: 1 }] });
  stock.addTable({
    name: 'Lots',
    ref: 'B2',
    headerRow: true,
    style: { theme: 'TableStyleMedium4', showRowStripes: true },
    columns: [{ name: 'Lot', filterButton: true }, { name: 'Quantity' }, { name: 'Received' }],
    rows: [
      ['L-1', 5000, new Date(Date.UTC(2026, 0, 15))],
      ['L-2', 250.5, new Date(Date.UTC(2026, 1, 1))],
    ],
  });
  stock.getCell('F2').note = 'Weighed twice';
  stock.getCell('F2').value = {
    richText: [{ text: 'two ' }, { font: { bold: true }, text: 'runs' }],
  };
  stock.getCell('F3').value = { text: 'a link', hyperlink: 'https://example.invalid/' };
  stock.getCell('F4').value = { formula: 'SUM(C3:C4)', result: 5250.5 };
  stock.getCell('F5').value = { error: '#REF!' };
  stock.getCell('C3').dataValidation = {
    type: 'decimal',
    operator: 'greaterThan',
    formulae: [0],
    allowBlank: true,
  };
  stock.getCell('B3').dataValidation = {
    type: 'list',
    formulae: ['Looks!$A$1:$A$3'],
    allowBlank: true,
  };
  stock.addConditionalFormatting({
    ref: 'C3:C9',
    rules: [
      {
        type: 'cellIs',
        operator: 'lessThan',
        priority: 1,
        formulae: [300],
        style: { font: { bold: true } },
      },
    ],
  });
  const looks = book.addWorksheet('Looks');
  looks.getCell('A1').value = 'Foam';
  looks.getCell('A1').fill = { type: 'pattern', pattern: 'solid', fgColor: { argb: 'FFAABBCC' } };
  looks.getCell('A1').border = { top: { style: 'double' } };
  looks.getColumn(1).width = 33;
  const picture = book.addImage({ base64: PIXEL, extension: 'png' });
  looks.addImage(picture, 'C3:E6');
  return new Uint8Array(await book.xlsx.writeBuffer());
}

const append: SheetEdits = {
  sheet: 'Stock',
  cells: [
    { row: 4, column: 1, value: 'L-3' },
    { row: 4, column: 2, value: 80 },
  ],
  tables: [
    {
      name: 'Lots',
      headers: ['Lot', 'Quantity', 'Received'],
      range: { startRow: 1, startColumn: 1, endRow: 4, endColumn: 3 },
    },
  ],
};

describe('a workbook made by another library', () => {
  it('is read with its values, styles, table and drop-downs', async () => {
    const image = imageOf(await foreign());
    const [stock, looks] = image.sheets;
    expect(stock?.tables[0]).toEqual({
      ...append.tables[0],
      range: { startRow: 1, startColumn: 1, endRow: 3, endColumn: 3 },
    });
    expect(cellAt(image, 'Stock', 'F2')?.value).toBe('two runs');
    expect(cellAt(image, 'Stock', 'F3')?.value).toBe('a link');
    expect(cellAt(image, 'Stock', 'F4')).toMatchObject({ formula: '=SUM(C3:C4)', value: 5250.5 });
    expect(cellAt(image, 'Stock', 'F5')?.value).toBe('#REF!');
    // 15 January 2026 is day 46037 of the 1900 system (45658 is 1 January 2025, plus 379 days).
    expect(cellAt(image, 'Stock', 'D3')?.value).toBe(46_037);
    expect(stock?.validations).toEqual([
      {
        range: { startRow: 2, startColumn: 1, endRow: 2, endColumn: 1 },
        choices: {
          sheet: 'Looks',
          range: { startRow: 0, startColumn: 0, endRow: 2, endColumn: 0 },
        },
      },
    ]);
    expect(image.styles[cellAt(image, 'Looks', 'A1')?.style ?? 0]?.fill).toBe('#AABBCC');
    expect(looks?.columnWidths[0]).toBe(231);
  });

  it('says what the page cannot show', async () => {
    expect(imageOf(await foreign()).notShown).toEqual([
      '1 comment on Stock',
      '1 conditional format on Stock',
      '1 link on Stock',
      '1 entry check on Stock',
      '1 picture on Looks',
    ]);
  });

  it('keeps every untouched part byte for byte', async () => {
    const before = await foreign();
    const after = patchedBytes(before, [append]);
    expect(differingParts(before, after)).toEqual([
      'xl/tables/table1.xml',
      'xl/worksheets/sheet1.xml',
    ]);
    expect([...partsOf(after).keys()]).toEqual([...partsOf(before).keys()]);
  });

  it('is read by that library with the new row and everything else', async () => {
    const book = await byExcelJs(patchedBytes(await foreign(), [append]));
    const stock = book.getWorksheet('Stock');
    expect(stock?.getCell('B5').value).toBe('L-3');
    expect(stock?.getCell('C5').value).toBe(80);
    expect(stock?.getCell('F2').note).toBe('Weighed twice');
    expect(stock?.getCell('C3').dataValidation.type).toBe('decimal');
    expect(stock?.getCell('F4').formula).toBe('SUM(C3:C4)');
    const rules = stock as unknown as { conditionalFormattings: readonly unknown[] };
    expect(rules.conditionalFormattings).toHaveLength(1);
    expect(book.getWorksheet('Looks')?.getImages()).toHaveLength(1);
  });
});

describe.skipIf(!soffice)('a workbook with charts saved by LibreOffice', () => {
  const before = soffice
    ? (byLibreOffice(writeWorkbook(sample), 'xlsx').get('book.xlsx') ?? Buffer.alloc(0))
    : Buffer.alloc(0);

  it('names its charts and keeps all parts but the edited sheet', () => {
    expect(imageOf(before).notShown).toContain('5 charts on Answers');
    const after = patchedBytes(
      before,
      [edits('Answers', { G3: '=not a formula', B12: 13 })].map((each) => ({
        ...each,
        cells: each.cells.filter(({ column }) => column === 6),
      })),
    );
    expect(differingParts(before, after)).toEqual(['xl/worksheets/sheet2.xml']);
    expect(cellAt(imageOf(after), 'Answers', 'G3')?.value).toBe('=not a formula');
  });

  it('grows the table that LibreOffice wrote', () => {
    const table = imageOf(before).sheets[0]?.tables[0];
    if (!table) throw new Error('no table');
    const longer = { ...table, range: { ...table.range, endRow: table.range.endRow + 1 } };
    const cells = [{ row: table.range.endRow + 1, column: 0, value: 'Amber' }];
    const after = patchedBytes(before, [{ sheet: 'Stock', cells, tables: [longer] }]);
    expect(imageOf(after).sheets[0]?.tables[0]?.range).toEqual(longer.range);
    const csv = byLibreOffice(after, 'csv').get('book-Stock.csv')?.toString('utf8');
    expect(csv?.split('\n')[4]).toMatch(/^Amber,/);
  });
});

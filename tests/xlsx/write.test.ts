import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { writeWorkbook } from '../../src/xlsx/write/write-workbook.ts';
import type { NewWorkbook } from '../../src/xlsx/write/new-workbook.ts';
import { sample } from './sample.ts';
import {
  byExcelJs,
  byLibreOffice,
  cellAt,
  imageOf,
  partText,
  partsOf,
  soffice,
} from './support.ts';

const bytes = writeWorkbook(sample);
const image = imageOf(bytes);
const sheet2 = partText(bytes, 'xl/worksheets/sheet2.xml');

describe('a written workbook, read back by us', () => {
  it('writes the same bytes for the same description', () => {
    expect(Buffer.compare(writeWorkbook(sample), bytes)).toBe(0);
  });

  it.each([
    ['Stock', 'A3', 'Slate & "Teal" <mica>', undefined],
    ['Stock', 'A4', '=HYPERLINK("x")', undefined],
    ['Stock', 'C3', 0.1, undefined],
    ['Stock', 'D3', 45_001.5, undefined],
    ['Stock', 'E2', 37, '=Materials[@[Pack price]]*2'],
    ['Answers', 'B2', 'book 1f2e', '=POUR.BOOK(Materials[#All])'],
    ['Answers', 'B3', 1234.5, '=POUR.ONHAND(A2,Book)'],
    ['Answers', 'B6', '#N/A', '=POUR.CANMAKE("Lantern Quay",Book)'],
    ['Answers', 'B7', true, '=B3>1'],
    ['Answers', 'A10', 'Item', '=POUR.STOCKLIST(Book)'],
    ['Answers', 'A14', 3, '=COUNTA(A10#)'],
    ["Maker's notes", 'A1', '  two\nlines\t\u0007_x0041_ 🧼 ', undefined],
  ])('%s!%s holds %j', (sheet, name, value, formula) => {
    const cell = cellAt(image, sheet, name);
    expect(cell?.value).toBe(value);
    expect(cell?.formula).toBe(formula);
  });

  it('says where a result spills and lists its other cells only for their style', () => {
    expect(cellAt(image, 'Answers', 'A10')?.spill).toEqual({
      startRow: 9,
      startColumn: 0,
      endRow: 11,
      endColumn: 2,
    });
    expect(cellAt(image, 'Answers', 'B11')).toBeUndefined();
    expect(cellAt(image, 'Answers', 'C11')?.value).toBe('');
  });

  it('keeps tables, names, drop-downs, frozen panes, widths, merges and hidden sheets', () => {
    const [stock, answers, notes] = image.sheets;
    expect(stock?.tables[0]?.range).toEqual({
      startRow: 0,
      startColumn: 0,
      endRow: 3,
      endColumn: 4,
    });
    expect(stock?.validations[0]?.choices).toEqual(['base', 'colourant', 'fragrance']);
    expect(answers?.validations[0]?.choices).toEqual({
      sheet: 'Stock',
      range: { startRow: 1, startColumn: 0, endRow: 3, endColumn: 0 },
    });
    expect([stock?.frozenRows, answers?.frozenRows, answers?.frozenColumns]).toEqual([1, 1, 1]);
    // 22 characters of 7 pixels, padding included (ECMA-376 part 1, 18.3.1.13).
    expect(stock?.columnWidths[0]).toBe(154);
    expect(answers?.merges).toEqual([{ startRow: 0, startColumn: 0, endRow: 0, endColumn: 3 }]);
    expect([stock?.hidden, notes?.hidden]).toEqual([false, true]);
    expect(image.names.map(({ name, sheet }) => [name, sheet])).toEqual([['Book', 'Answers']]);
    expect(image.notShown).toEqual(['5 charts on Answers']);
  });

  it('keeps row heights, grid lines, tab colours, lines, indents and highlights', () => {
    const look = (name: string) => image.styles[cellAt(image, 'Answers', name)?.style ?? 0];
    const answers = image.sheets[1];
    // 28 points are 37.3 pixels at 96 to the inch; a row that no one set is not listed.
    expect(answers?.rowHeights).toEqual({ 0: 37 });
    expect([answers?.gridLines, image.sheets[0]?.gridLines]).toEqual([false, true]);
    expect([answers?.tabColor, image.sheets[2]?.tabColor]).toEqual(['#2F7F86', undefined]);
    expect(look('B3')).toMatchObject({
      vertical: 'center',
      indent: 2,
      lines: { bottom: '#C5D2D3' },
    });
    expect(answers?.highlights).toEqual([
      {
        ranges: [{ startRow: 10, startColumn: 1, endRow: 20, endColumn: 1 }],
        formula: '=AND(B11<>"",B11<20)',
        look: { bold: true, fill: '#FDE9D9' },
      },
    ]);
  });
});

describe('how formulas are stored', () => {
  it.each([
    [
      'a scalar add-in function is an ordinary formula',
      '<f>_xldudf_POUR_BOOK(Materials[#All])</f>',
    ],
    [
      'a spilling one is a dynamic array over its range',
      'cm="1"><f t="array" ref="A10:C12">_xldudf_POUR_STOCKLIST(Book)</f><v>Item</v>',
    ],
    [
      'a spill reference keeps its stored name',
      '<f t="array" ref="A14">COUNTA(_xlfn.ANCHORARRAY(A10))</f>',
    ],
    ['spilled numbers stand in their cells', '<c r="B11"><v>4200</v></c>'],
    ['spilled errors stand as errors', '<c r="C12" t="e"><v>#N/A</v></c>'],
  ])('%s', (_what, xml) => {
    expect(sheet2).toContain(xml);
  });

  it('stores this-row references in their long form', () => {
    const stock = partText(bytes, 'xl/worksheets/sheet1.xml');
    expect(stock).toContain('Materials[[#This Row],[Pack price]]*2');
  });
});

describe('a written workbook, read by others', () => {
  it.skipIf(!existsSync('/usr/bin/xmllint'))('has only well-formed parts', () => {
    for (const [name, content] of partsOf(bytes)) {
      execFileSync('/usr/bin/xmllint', ['--noout', '-'], { input: content, stdio: 'pipe' });
      expect(name).toMatch(/\.(xml|rels)$/);
    }
  });

  it('exceljs sees values, formulas, the table, drop-downs and frozen panes', async () => {
    const book = await byExcelJs(bytes);
    const [stock, answers] = [book.getWorksheet('Stock'), book.getWorksheet('Answers')];
    expect(stock?.getCell('A3').value).toBe('Slate & "Teal" <mica>');
    expect(stock?.getCell('A4').value).toBe('=HYPERLINK("x")');
    expect(stock?.getCell('C2').numFmt).toBe('#,##0.00');
    expect(stock?.getCell('B3').dataValidation.formulae).toEqual(['"base,colourant,fragrance"']);
    expect(stock?.views[0]).toMatchObject({ state: 'frozen', ySplit: 1 });
    expect(answers?.getCell('B2').formula).toBe('_xldudf_POUR_BOOK(Materials[#All])');
    expect(answers?.getCell('B3').result).toBe(1234.5);
    expect(answers?.getCell('B5').dataValidation.formulae).toEqual([
      'INDIRECT("Materials[Material]")',
    ]);
    expect(answers?.getCell('A1').font.bold).toBe(true);
    const table = (stock as unknown as { tables: Record<string, { table: { tableRef: string } }> })
      .tables['Materials'];
    expect(table?.table.tableRef).toBe('A1:E4');
    expect(book.getWorksheet("Maker's notes")?.state).toBe('hidden');
  });

  it.skipIf(!soffice)('LibreOffice shows the same numbers, cached results included', () => {
    const csv = byLibreOffice(bytes, 'csv');
    const answers = csv.get('book-Answers.csv')?.toString('utf8').split('\n') ?? [];
    const line = (row: number) => answers[row]?.split(',').slice(0, 2);
    expect(line(1)).toEqual(['Book', 'book 1f2e']);
    expect(line(2)).toEqual(['On hand', '1234.5']);
    expect(line(3)).toEqual(['Sum', '25.6']);
    expect(line(6)).toEqual(['', 'TRUE']);
    const stock = csv.get('book-Stock.csv')?.toString('utf8').split('\n') ?? [];
    expect(stock[1]).toBe('Clear base,base,18.5,2023-03-15,37');
    expect(stock[3]).toBe('"=HYPERLINK(""x"")",fragrance,7,2025-01-02,14');
  });

  it.skipIf(!soffice)('LibreOffice finds the five charts and writes them out again', () => {
    const converted = byLibreOffice(bytes, 'xlsx').get('book.xlsx');
    const charts = [...partsOf(converted ?? Buffer.alloc(0))]
      .filter(([name]) => /^xl\/charts\/chart\d+\.xml$/.test(name))
      .map(([, content]) => new TextDecoder().decode(content));
    const kinds = [
      'barDir val="col"',
      'barDir val="bar"',
      'lineChart',
      'scatterChart',
      'doughnutChart',
    ];
    expect(charts).toHaveLength(5);
    for (const kind of kinds) {
      const found = charts.filter((chart) => chart.includes(kind));
      expect(found, kind).toHaveLength(1);
      expect(found[0], kind).toContain('Answers!$G$2:$G$4');
    }
  });
});

describe('a description that no workbook can hold', () => {
  const one = (sheet: Partial<NewWorkbook['sheets'][number]>): NewWorkbook => ({
    sheets: [{ name: 'One', ...sheet }],
  });
  const table = (name: string, headers: readonly string[]) => ({
    name,
    row: 0,
    column: 0,
    columns: headers.map((header) => ({ header })),
    rows: [],
  });
  it.each([
    [
      'two values in one cell',
      one({
        cells: [
          { row: 0, column: 0, value: 1 },
          { row: 0, column: 0, value: 2 },
        ],
      }),
      /given twice/,
    ],
    [
      'a spill over a value',
      one({
        cells: [
          { row: 0, column: 0, value: 1, formula: '=A9#', spill: [[1], [2]] },
          { row: 1, column: 0, value: 2 },
        ],
      }),
      /given twice/,
    ],
    [
      'a value over a value of a table',
      one({ tables: [table('T', ['a'])], cells: [{ row: 0, column: 0, value: 1 }] }),
      /One!A1 is given twice/,
    ],
    [
      'an empty cell with a style in a table',
      one({ tables: [table('T', ['a'])], cells: [{ row: 1, column: 0, value: '' }] }),
      /One!A2 lies in a table/,
    ],
    [
      'a table over another',
      one({ tables: [table('T', ['a', 'b']), { ...table('U', ['c']), row: 1, column: 1 }] }),
      /One!B2 is given twice/,
    ],
    [
      'a row of a table with too few cells',
      one({ tables: [{ ...table('T', ['a', 'b']), rows: [[1, 2], [3]] }] }),
      /Row 2 of table T has 1 cells/,
    ],
    ['a bad sheet name', { sheets: [{ name: 'a/b' }] }, /no sheet name/],
    [
      'two tables of one name',
      one({ tables: [table('T', ['a']), table('t', ['a'])] }),
      /Two things/,
    ],
    ['two columns of one header', one({ tables: [table('T', ['a', 'A'])] }), /Two things/],
    ['a table named like a cell', one({ tables: [table('AB12', ['a'])] }), /name neither/],
    ['no visible sheet', one({ hidden: true }), /No sheet is visible/],
    [
      'a comma in a drop-down',
      one({
        validations: [
          { range: { startRow: 0, startColumn: 0, endRow: 0, endColumn: 0 }, choices: ['a,b'] },
        ],
      }),
      /do not fit/,
    ],
  ] satisfies readonly [string, NewWorkbook, RegExp][])('throws on %s', (_what, book, message) => {
    expect(() => writeWorkbook(book)).toThrow(message);
  });
});

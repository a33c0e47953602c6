import { describe, expect, it } from 'vitest';
import type { SheetEdits, TableImage } from '../../src/xlsx/image.ts';
import { writeWorkbook } from '../../src/xlsx/write/write-workbook.ts';
import { sample } from './sample.ts';
import {
  byExcelJs,
  byLibreOffice,
  cellAt,
  differingParts,
  edits,
  imageOf,
  partText,
  patchedBytes,
  refusalOf,
  soffice,
  withParts,
} from './support.ts';

const original = writeWorkbook(sample);
const materials = imageOf(original).sheets[0]?.tables[0] as TableImage;

const grown = (rows: number): TableImage => ({
  ...materials,
  range: { ...materials.range, endRow: materials.range.endRow + rows },
});

describe('tables that grow and shrink', () => {
  const row = (at: number, values: readonly (string | number)[]) =>
    values.map((value, column) => ({ row: at, column, value }));
  const append: SheetEdits = {
    sheet: 'Stock',
    cells: [...row(4, ['Amber', 'colourant', 3.5]), ...row(5, ['Foam', 'base'])],
    tables: [grown(2)],
  };
  const after = patchedBytes(original, [append]);

  it('moves the end of the table and of its filter, and nothing else', () => {
    expect(differingParts(original, after)).toEqual([
      'xl/tables/table1.xml',
      'xl/worksheets/sheet1.xml',
    ]);
    expect(partText(after, 'xl/tables/table1.xml')).toBe(
      partText(original, 'xl/tables/table1.xml').replaceAll('ref="A1:E4"', 'ref="A1:E6"'),
    );
    expect(imageOf(after).sheets[0]?.tables[0]?.range.endRow).toBe(5);
  });

  it('gives new rows the style of the row above, in cells left blank too', () => {
    expect(cellAt(imageOf(after), 'Stock', 'C5')).toMatchObject({ value: 3.5, style: 1 });
    expect(cellAt(imageOf(after), 'Stock', 'C6')).toMatchObject({ value: '', style: 1 });
    expect(cellAt(imageOf(after), 'Stock', 'D6')).toMatchObject({ value: '', style: 2 });
  });

  it('another library reads the longer table', async () => {
    const stock = (await byExcelJs(after)).getWorksheet('Stock');
    expect(stock?.getCell('A5').value).toBe('Amber');
    expect(stock?.getCell('C5').numFmt).toBe('#,##0.00');
    const { tables } = stock as unknown as {
      tables: Record<string, { table: { tableRef: string } }>;
    };
    expect(tables['Materials']?.table.tableRef).toBe('A1:E6');
  });

  it.skipIf(!soffice)('LibreOffice computes with the new rows', () => {
    const answers = byLibreOffice(
      withParts(after, {
        'xl/worksheets/sheet2.xml': (text) => text.replace('<v>25.6</v>', ''),
      }),
      'csv',
    ).get('book-Answers.csv');
    // 18.5 + 0.1 + 7 and the new 3.5.
    expect(answers?.toString('utf8').split('\n')[3]).toMatch(/^Sum,29\.1,/);
  });

  it('may lose rows', () => {
    const shorter = patchedBytes(after, [
      { sheet: 'Stock', cells: row(5, ['', '']), tables: [grown(1)] },
    ]);
    expect(imageOf(shorter).sheets[0]?.tables[0]?.range.endRow).toBe(4);
  });

  it.each([
    [
      'a cell below that is not empty',
      edits('Stock', { B5: 'a note' }),
      grown(1),
      /no room to grow: cell B5 below it is not empty/,
    ],
    [
      'a formula below',
      { sheet: 'Stock', tables: [], cells: [{ row: 4, column: 0, value: 1, formula: '=1' }] },
      grown(1),
      /cell A5/,
    ],
    [
      'other columns',
      undefined,
      { ...grown(1), range: { ...grown(1).range, endColumn: 5 } },
      /columns of the table/,
    ],
    [
      'other headers',
      undefined,
      { ...grown(1), headers: ['x', ...materials.headers.slice(1)] },
      /columns of the table/,
    ],
    ['no row left', undefined, grown(-3), /at least one row/],
    ['an unknown table', undefined, { ...grown(1), name: 'Lots' }, /no table "Lots"/],
  ] satisfies readonly [string, SheetEdits | undefined, TableImage, RegExp][])(
    'refuses to change a table with %s',
    (_what, before, table, sentence) => {
      const bytes = before ? patchedBytes(original, [before]) : original;
      expect(refusalOf(bytes, [{ sheet: 'Stock', cells: [], tables: [table] }])).toMatch(sentence);
    },
  );

  it('grows where a cell below is cleared first in the same request', () => {
    const bytes = patchedBytes(original, [edits('Stock', { B5: 'a note' })]);
    const cells = [{ row: 4, column: 1, value: '' }, ...row(4, ['Amber', 'colourant'])];
    const done = imageOf(patchedBytes(bytes, [{ sheet: 'Stock', cells, tables: [grown(1)] }]));
    expect(cellAt(done, 'Stock', 'B5')?.value).toBe('colourant');
  });

  it('refuses another header, and takes the same one', () => {
    expect(refusalOf(original, [edits('Stock', { B1: 'Sort' })])).toMatch(
      /B1 is the header "Kind"/,
    );
    expect(patchedBytes(original, [edits('Stock', { B1: 'Kind' })]).length).toBeGreaterThan(0);
  });

  it('refuses to grow a table with a total row', () => {
    const totalled = withParts(original, {
      'xl/tables/table1.xml': (text) => text.replace('totalsRowShown="0"', 'totalsRowCount="1"'),
    });
    expect(refusalOf(totalled, [{ sheet: 'Stock', cells: [], tables: [grown(1)] }])).toMatch(
      /total row/,
    );
  });
});

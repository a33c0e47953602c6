import type { NewWorkbook } from '../../src/xlsx/write/new-workbook.ts';
import type { RangeImage } from '../../src/xlsx/image.ts';

/** A small workbook with one of everything that `writeWorkbook` can write. Invented data. */
export const sample: NewWorkbook = {
  title: 'Sample',
  names: [{ name: 'Book', sheet: 'Answers', range: at(1, 1, 1, 1) }],
  activeSheet: 'Answers',
  sheets: [
    {
      name: 'Stock',
      tabColor: '#2A7F8E',
      frozenRows: 1,
      tables: [
        {
          name: 'Materials',
          row: 0,
          column: 0,
          tableStyle: 'TableStyleMedium2',
          columns: [
            { header: 'Material', width: 22 },
            { header: 'Kind', width: 12 },
            { header: 'Pack price', width: 12, style: { numberFormat: '#,##0.00' } },
            { header: 'Since', width: 12, style: { numberFormat: 'yyyy-mm-dd' } },
            { header: 'Twice' },
          ],
          rows: [
            [
              'Clear base',
              'base',
              18.5,
              45_000,
              { formula: '=Materials[@[Pack price]]*2', value: 37 },
            ],
            [
              'Slate & "Teal" <mica>',
              'colourant',
              0.1,
              45_001.5,
              { formula: '=Materials[@[Pack price]]*2', value: 0.2 },
            ],
            [
              '=HYPERLINK("x")',
              'fragrance',
              7,
              '2025-01-02',
              { formula: '=Materials[@[Pack price]]*2', value: 14 },
            ],
          ],
        },
      ],
      validations: [{ range: at(1, 1, 200, 1), choices: ['base', 'colourant', 'fragrance'] }],
    },
    {
      name: 'Answers',
      columnWidths: { 0: 30, 1: 14 },
      rowHeights: { 0: 28 },
      frozenRows: 1,
      frozenColumns: 1,
      gridLines: false,
      tabColor: '#2F7F86',
      merges: [at(0, 0, 0, 3)],
      cells: [
        {
          row: 0,
          column: 0,
          value: 'What is on the shelf',
          style: { bold: true, fontSize: 16, color: '#123456', fill: '#EEF6F7', wrap: true },
        },
        { row: 1, column: 0, value: 'Book' },
        { row: 1, column: 1, value: 'book 1f2e', formula: '=POUR.BOOK(Materials[#All])' },
        { row: 2, column: 0, value: 'On hand' },
        {
          row: 2,
          column: 1,
          value: 1234.5,
          formula: '=POUR.ONHAND(A2,Book)',
          style: {
            numberFormat: '#,##0.0',
            vertical: 'center',
            indent: 2,
            lineBelow: '#C5D2D3',
          },
        },
        { row: 3, column: 0, value: 'Sum' },
        { row: 3, column: 1, value: 25.6, formula: '=SUM(Materials[Pack price])' },
        { row: 4, column: 0, value: 'Pick' },
        { row: 4, column: 1, value: 'Clear base' },
        { row: 5, column: 1, value: '#N/A', formula: '=POUR.CANMAKE("Lantern Quay",Book)' },
        { row: 6, column: 1, value: true, formula: '=B3>1' },
        {
          row: 9,
          column: 0,
          value: 'Item',
          formula: '=POUR.STOCKLIST(Book)',
          spill: [
            ['Item', 'On hand', 'Value'],
            ['Clear base', 4200, 31.5],
            ['Slate', 12.25, '#N/A'],
          ],
        },
        { row: 10, column: 2, value: '', style: { numberFormat: '0.00' } },
        { row: 13, column: 0, value: 3, formula: '=COUNTA(A10#)' },
        ...chartRow(1, 'Slate', 40, 3),
        ...chartRow(2, 'Teal', 25, 1.5),
        ...chartRow(3, 'Amber', -5, 6),
      ],
      validations: [
        {
          range: at(4, 1, 4, 1),
          choices: { source: '=INDIRECT("Materials[Material]")' },
          prompt: { title: 'Material', text: 'One of the Materials' },
        },
      ],
      highlights: [
        { range: at(10, 1, 20, 1), formula: '=AND(B11<>"",B11<20)', fill: '#FDE9D9', bold: true },
      ],
      charts: [
        {
          kind: 'column',
          title: 'On hand',
          description: 'Grams on hand by item',
          place: at(16, 0, 28, 3),
          series: [{ name: 'On hand', categories: of(1, 5, 3, 5), values: of(1, 6, 3, 6) }],
          verticalAxis: { title: 'g', numberFormat: '#,##0', minimum: 0 },
        },
        {
          kind: 'bar',
          title: 'Lying',
          description: 'The same, lying',
          place: at(16, 4, 28, 8),
          series: [{ name: 'On hand', categories: of(1, 5, 3, 5), values: of(1, 6, 3, 6) }],
        },
        {
          kind: 'line',
          title: 'Line',
          description: 'A line',
          place: at(30, 0, 42, 3),
          series: [
            { name: 'On hand', categories: of(1, 5, 3, 5), values: of(1, 6, 3, 6) },
            { name: 'Value', categories: of(1, 5, 3, 5), values: of(1, 7, 3, 7) },
          ],
        },
        {
          kind: 'scatter',
          title: 'Scatter',
          description: 'Points',
          place: at(30, 4, 42, 8),
          lines: true,
          series: [{ name: 'v', categories: of(1, 6, 3, 6), values: of(1, 7, 3, 7) }],
        },
        {
          kind: 'doughnut',
          title: 'Share',
          description: 'Shares',
          place: at(44, 0, 56, 3),
          series: [{ name: 'On hand', categories: of(1, 5, 3, 5), values: of(1, 6, 3, 6) }],
        },
      ],
      print: { landscape: true, repeatRows: 1, area: at(0, 0, 60, 8) },
    },
    {
      name: "Maker's notes",
      hidden: true,
      cells: [{ row: 0, column: 0, value: '  two\nlines\t\u0007_x0041_ 🧼 ' }],
    },
  ],
};

function at(startRow: number, startColumn: number, endRow: number, endColumn: number): RangeImage {
  return { startRow, startColumn, endRow, endColumn };
}

function of(startRow: number, startColumn: number, endRow: number, endColumn: number) {
  return { sheet: 'Answers', range: at(startRow, startColumn, endRow, endColumn) };
}

function chartRow(row: number, name: string, first: number, second: number) {
  return [name, first, second].map((value, index) => ({ row, column: 5 + index, value }));
}

import type { CellImage, SheetImage, WorkbookImage } from '../../../src/xlsx/image.ts';
import type { Cell } from '../../../src/workbook/port.ts';

/** A cell of a test sheet: a value, or a formula with no cached answer yet. */
type Written = Cell | { readonly f: string; readonly spills?: readonly [number, number] };

const cellAt = (row: number, column: number, written: Written): CellImage => {
  if (typeof written !== 'object') return { row, column, value: written, style: 0 };
  const { f, spills } = written;
  const spill = spills && {
    startRow: row,
    startColumn: column,
    endRow: row + spills[0] - 1,
    endColumn: column + spills[1] - 1,
  };
  return { row, column, value: 0, formula: f, style: 0, ...(spill ? { spill } : {}) };
};

const sheet = (
  name: string,
  rows: readonly (readonly Written[])[],
  {
    styled = {},
    ...more
  }: Partial<SheetImage> & { styled?: Readonly<Record<number, number>> } = {},
): SheetImage => ({
  name,
  hidden: false,
  frozenRows: 0,
  frozenColumns: 0,
  columnWidths: {},
  rowHeights: {},
  gridLines: true,
  cells: rows.flatMap((row, r) =>
    row.flatMap((written, c) =>
      written === '' ? [] : [{ ...cellAt(r, c, written), style: styled[r] ?? 0 }],
    ),
  ),
  merges: [],
  tables: [],
  validations: [],
  highlights: [],
  ...more,
});

const range = (startRow: number, startColumn: number, endRow: number, endColumn: number) => ({
  startRow,
  startColumn,
  endRow,
  endColumn,
});

/** An invented small workbook: two tables, a sheet of questions, text that looks like formulas. */
export const bookImage = (version: string): WorkbookImage => ({
  fileName: 'quay soaps.xlsx',
  version,
  styles: [
    { numberFormat: 'General', bold: false, italic: false, wrap: false },
    { numberFormat: '0.00', bold: true, italic: false, fill: '#E8F1F4', wrap: false },
    { numberFormat: 'General', bold: true, italic: false, fontSize: 24, wrap: false },
    { numberFormat: 'General', bold: false, italic: false, wrap: true },
  ],
  names: [{ name: 'Book', sheet: 'Ask', range: range(0, 1, 0, 1) }],
  brokenNames: [],
  notShown: ['2 charts on Costing'],
  sheets: [
    sheet(
      'Shelf',
      [
        ['Material', 'Unit', 'Density g/ml', 'Max %'],
        ['Clear base', 'g', 1, 100],
        ['Teal mica', 'g', '', 3],
        ['=HYPERLINK("http://example.invalid","click")', 'g', 1.5, '1.5'],
      ],
      {
        frozenRows: 1,
        columnWidths: { 0: 240 },
        tables: [
          {
            name: 'Materials',
            range: range(0, 0, 3, 3),
            headers: ['Material', 'Unit', 'Density g/ml', 'Max %'],
          },
        ],
        validations: [{ range: range(1, 1, 3, 1), choices: ['g', 'ml', 'each'] }],
      },
    ),
    sheet(
      'Ledger',
      [
        ['Entry', 'Reason', 'Material', 'Quantity'],
        ['M-1', 'used', 'Clear base', -250],
        ['', '', '', ''],
        [],
        [],
        [],
        ['Notes far below'],
      ],
      {
        tables: [
          {
            name: 'Moves',
            range: range(0, 0, 2, 3),
            headers: ['Entry', 'Reason', 'Material', 'Quantity'],
          },
        ],
      },
    ),
    sheet('Ask', [
      ['Book', { f: '=POUR.BOOK(Materials[#All],Moves[[#Headers],[#Data]])' }],
      ['Rows', { f: '=POUR.ROWS(Book)' }],
      ['Total', { f: '=POUR.TOTAL(Moves[Quantity])' }],
      ['Fails', { f: '=POUR.FAIL("that name")' }, { f: '=IFERROR(POUR.FAIL(""),"caught")' }],
      ['Nothing', { f: '=POUR.LATER()' }, { f: '=POUR.SHARE(1,0)' }],
      ['Seen', { f: '=POUR.SEEN(Shelf!A2,,TRUE,Shelf!C3,"=x",Shelf!D4)' }],
      ['Wrapped', { f: '=POUR.SEEN(B4)' }, { f: '=POUR.SEEN(Materials[Density g/ml])' }],
      ['Native', { f: '=SUM(Materials[Max %])' }, { f: '=SUM(Materials[[#All],[Max %]])' }],
      ['List', { f: '=POUR.LIST()', spills: [3, 2] }],
    ]),
    sheet(
      'Back room',
      [
        ['put away'],
        ...[1, 2, 3, 4].map((row) => [{ f: `=IFERROR(INDEX(Odds[Thing],${String(row)})&"","")` }]),
      ],
      { hidden: true },
    ),
    sheet('Odds & ends', [['Thing'], ['jug'], ['sieve']], {
      tables: [{ name: 'Odds', range: range(0, 0, 2, 0), headers: ['Thing'] }],
      validations: [
        {
          range: range(1, 2, 1, 2),
          choices: { sheet: 'Odds & ends', range: range(1, 0, 2, 0) },
        },
        { range: range(1, 4, 9, 4), choices: { sheet: 'Back room', range: range(1, 0, 4, 0) } },
      ],
      styled: { 2: 1 },
    }),
    sheet(
      'Looks',
      [
        ['A large title', { f: '=INDEX(Materials[Material],2)' }],
        [false, { f: '=INDEX(Odds[Thing],2)' }, { f: '=IF(A2,"yes","no")' }],
        ['set by hand', { f: '=SUM(OFFSET(Materials[[#Headers],[Max %]],1,0,2,1))' }],
        [
          'text that needs several lines to be read',
          { f: '=IFERROR(INDEX(Odds[Thing],9),"none")' },
        ],
        ['short', 2],
        ['short', 7],
        ['by a function', { f: '=POUR.TOTAL(Moves[Quantity])' }],
        ['by another sheet', { f: '=Ask!B3' }],
        ['in a list', { f: '=Moves[Quantity]+0', spills: [2, 1] }],
        ['in a list'],
        ['in a list that grew'],
      ],
      {
        rowHeights: { 2: 60 },
        validations: [{ range: range(1, 0, 1, 0), choices: ['TRUE', 'FALSE'] }],
        highlights: [
          {
            ranges: [range(4, 0, 5, 1)],
            formula: '=$B5>5',
            look: { bold: false, fill: '#FBE0CF' },
          },
          {
            ranges: [range(6, 0, 10, 1)],
            formula: '=N($B7)>0',
            look: { bold: false, fill: '#FBE0CF' },
          },
        ],
        styled: { 0: 2, 3: 3 },
      },
    ),
  ],
});

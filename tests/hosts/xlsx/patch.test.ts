import { describe, expect, it } from 'vitest';
import type { SheetEdits, TableImage } from '../../../src/hosts/xlsx/image.ts';
import { writeWorkbook } from '../../../src/hosts/xlsx/write.ts';
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

describe('editing cells', () => {
  it.each([
    ['a number', 'Stock', 'C2', 19.25],
    ['text that looks like a formula', 'Stock', 'A2', '=1+1'],
    ['text that looks like an error', 'Stock', 'A2', '#N/A'],
    ['text with every awkward character', 'Stock', 'A2', ' <&">\'\r\n\u0001\ufffe_x000D_ \ud800 '],
    ['true', 'Stock', 'B2', true],
    ['a cell in a new row far below', 'Stock', 'J400', 'far'],
    ['a cell before the first of its row', 'Answers', 'A7', 'first'],
    ['a cell between two', "Maker's notes", 'C1', 3],
  ])('%s comes back as it went in', (_what, sheet, name, value) => {
    const after = imageOf(patchedBytes(original, [edits(sheet, { [name]: value })]));
    expect(cellAt(after, sheet, name)?.value).toBe(value);
    expect(cellAt(after, sheet, name)?.formula).toBeUndefined();
  });

  it('changes nothing but the sheet', () => {
    const after = patchedBytes(original, [edits('Stock', { C2: 5 })]);
    expect(differingParts(original, after)).toEqual(['xl/worksheets/sheet1.xml']);
  });

  it('keeps every other byte of the sheet', () => {
    const after = partText(
      patchedBytes(original, [edits('Stock', { C2: 5 })]),
      'xl/worksheets/sheet1.xml',
    );
    const before = partText(original, 'xl/worksheets/sheet1.xml');
    expect(after).toBe(
      before.replace('<c r="C2" s="1"><v>18.5</v></c>', '<c r="C2" s="1"><v>5</v></c>'),
    );
  });

  it('keeps the style of a cell that is emptied', () => {
    const after = imageOf(patchedBytes(original, [edits('Stock', { C2: '', A2: '' })]));
    expect(cellAt(after, 'Stock', 'C2')).toMatchObject({ value: '', style: 1 });
    expect(cellAt(after, 'Stock', 'A2')).toBeUndefined();
  });

  it('widens the sheet’s dimension and never shrinks it', () => {
    const dimension = (bytes: Uint8Array) =>
      /<dimension ref="([^"]+)"/.exec(partText(bytes, 'xl/worksheets/sheet1.xml'))?.[1];
    expect(dimension(original)).toBe('A1:E4');
    expect(dimension(patchedBytes(original, [edits('Stock', { H9: 1 })]))).toBe('A1:H9');
    expect(dimension(patchedBytes(original, [edits('Stock', { E4: '' })]))).toBe('A1:E4');
  });

  it('lets the last of several edits of a cell win', () => {
    const twice: SheetEdits = {
      sheet: 'Stock',
      tables: [],
      cells: [
        { row: 1, column: 2, value: 1 },
        { row: 1, column: 2, value: 2 },
      ],
    };
    expect(cellAt(imageOf(patchedBytes(original, [twice])), 'Stock', 'C2')?.value).toBe(2);
  });

  it('does the same again with no further change', () => {
    const once = patchedBytes(original, [edits('Stock', { C2: 5, A9: 'x' })]);
    expect(differingParts(once, patchedBytes(once, [edits('Stock', { C2: 5, A9: 'x' })]))).toEqual(
      [],
    );
  });

  it('leaves the given bytes untouched', () => {
    const copy = Uint8Array.from(original);
    patchedBytes(original, [edits('Stock', { C2: 5 })]);
    expect(Buffer.compare(copy, original)).toBe(0);
  });
});

describe('editing formulas', () => {
  const formula = (
    name: 'A20' | 'B3' | 'A10',
    text: string,
    value: string | number,
    spill?: readonly (readonly (string | number)[])[],
  ): SheetEdits => {
    const place = {
      A20: { row: 19, column: 0 },
      B3: { row: 2, column: 1 },
      A10: { row: 9, column: 0 },
    }[name];
    return {
      sheet: 'Answers',
      tables: [],
      cells: [{ ...place, value, formula: text, ...(spill ? { spill } : {}) }],
    };
  };
  const sheet = (bytes: Uint8Array) => partText(bytes, 'xl/worksheets/sheet2.xml');

  it.each([
    ['=SUM(B3:B4)', 'SUM(B3:B4)'],
    ['=pour.onhand("Slate",Book)', '_xldudf_POUR_ONHAND("Slate",Book)'],
    ['=XLOOKUP("POUR.BOOK(",A:A,B:B)', '_xlfn.XLOOKUP("POUR.BOOK(",A:A,B:B)'],
    ['=FILTER(A1:B9,B1:B9>2)', '_xlfn._xlws.FILTER(A1:B9,B1:B9>2)'],
    ['=LET(cups,4,cups*2)', '_xlfn.LET(_xlpm.cups,4,_xlpm.cups*2)'],
    ['=@A1:A9', '_xlfn.SINGLE(A1:A9)'],
    ['=SUM(A10#)', 'SUM(_xlfn.ANCHORARRAY(A10))'],
    ["=SUM('Maker''s notes'!A1#)", "SUM(_xlfn.ANCHORARRAY('Maker''s notes'!A1))"],
  ])('%s is stored as %s and reads as typed', (typed, stored) => {
    const after = patchedBytes(original, [formula('A20', typed, 1)]);
    const escaped = stored.replaceAll('"', '&quot;').replaceAll('>', '&gt;');
    expect(sheet(after)).toContain(`>${escaped}</f>`);
    const back = cellAt(imageOf(after), 'Answers', 'A20')?.formula;
    expect(back?.toUpperCase()).toBe(typed.toUpperCase());
  });

  it('only renews the cached value of a formula that did not change', () => {
    const after = patchedBytes(original, [formula('B3', '=POUR.ONHAND(A2,Book)', 99)]);
    expect(sheet(after)).toBe(sheet(original).replace('<v>1234.5</v>', '<v>99</v>'));
  });

  it('lets a spilled result shrink and empties what it leaves', () => {
    const after = imageOf(
      patchedBytes(original, [
        formula('A10', '=POUR.STOCKLIST(Book)', 'Item', [['Item', 'On hand']]),
      ]),
    );
    expect(cellAt(after, 'Answers', 'A10')?.spill).toMatchObject({ endRow: 9, endColumn: 1 });
    expect(cellAt(after, 'Answers', 'A11')).toBeUndefined();
    expect(cellAt(after, 'Answers', 'C11')?.value).toBe('');
  });

  it('lets a spilled result grow over empty cells', () => {
    const rows = [
      ['Item', 1],
      ['a', 2],
      ['b', 3],
      ['c', 4],
    ];
    const after = patchedBytes(
      original,
      [
        formula(
          'A10',
          '=POUR.STOCKLIST(Book)',
          'Item',
          rows.slice(0, 4).map((row) => row.slice(0, 2)),
        ),
      ].map((each) => ({ ...each, cells: [...each.cells, { row: 13, column: 0, value: '' }] })),
    );
    expect(sheet(after)).toContain('ref="A10:B13"');
    expect(sheet(after)).toContain('<c r="B13"><v>4</v></c>');
  });

  it('keeps a formula that may spill dynamic while its result is one error', () => {
    const after = patchedBytes(original, [formula('A10', '=POUR.STOCKLIST(Book)', '#N/A')]);
    expect(sheet(after)).toContain('<c r="A10" t="e" cm="1"><f t="array" ref="A10">');
  });

  it.each([
    [
      'spilling over an entered cell',
      formula('A10', '=POUR.STOCKLIST(Book)', 1, [[1], [2], [3], [4], [5]]),
      /result of A10 would cover A14/,
    ],
    [
      'entering something inside a spilled result',
      edits('Answers', { B11: 7 }),
      /B11 shows part of the result of A10/,
    ],
    ['"@" before a function', formula('A20', '=@POUR.STOCKLIST(Book)', 1), /leave out the "@"/],
    ['a number that is none', edits('Answers', { A20: Number.NaN }), /not finite/],
    ['text beyond a cell', edits('Answers', { A20: 'x'.repeat(32_768) }), /32767 characters/],
    [
      'a cell off the sheet',
      { sheet: 'Answers', tables: [], cells: [{ row: 1_048_576, column: 0, value: 1 }] },
      /no cell in row 1048577/,
    ],
    ['a sheet that is not there', edits('Nowhere', { A1: 1 }), /no sheet "Nowhere"/],
  ])('refuses %s', (_what, edit, sentence) => {
    expect(refusalOf(original, [edit])).toMatch(sentence);
  });
});

describe('a workbook without metadata for dynamic arrays', () => {
  const bare = withParts(original, {
    'xl/metadata.xml': undefined,
    'xl/worksheets/sheet2.xml': (text) => text.replaceAll(' cm="1"', ''),
    'xl/_rels/workbook.xml.rels': (text) =>
      text.replace(/<Relationship [^>]*sheetMetadata[^>]*>/, ''),
    '[Content_Types].xml': (text) => text.replace(/<Override [^>]*metadata\.xml[^>]*>/, ''),
  });
  const spill: SheetEdits = {
    sheet: 'Answers',
    tables: [],
    cells: [
      {
        row: 9,
        column: 0,
        value: 'Item',
        formula: '=POUR.STOCKLIST(Book)',
        spill: [['Item'], ['Foam']],
      },
    ],
  };

  it('gets it with the first formula that spills, and only then', async () => {
    expect(differingParts(bare, patchedBytes(bare, [edits('Answers', { A9: 1 })]))).toEqual([
      'xl/worksheets/sheet2.xml',
    ]);
    const after = patchedBytes(bare, [spill]);
    expect(differingParts(bare, after)).toEqual([
      '[Content_Types].xml',
      'xl/_rels/workbook.xml.rels',
      'xl/metadata.xml',
      'xl/worksheets/sheet2.xml',
    ]);
    expect(partText(after, 'xl/metadata.xml')).toBe(partText(original, 'xl/metadata.xml'));
    expect(partText(after, 'xl/worksheets/sheet2.xml')).toContain(
      'cm="1"><f t="array" ref="A10:A11">',
    );
    expect((await byExcelJs(after)).getWorksheet('Answers')?.getCell('A11').value).toBe('Foam');
    expect(differingParts(after, patchedBytes(after, [spill]))).toEqual([]);
  });

  it('with other metadata only, gets an older array formula instead', () => {
    const other = withParts(original, {
      'xl/metadata.xml': (text) => text.replaceAll('XLDAPR', 'XLRICHVALUE'),
      'xl/worksheets/sheet2.xml': (text) => text.replaceAll(' cm="1"', ''),
    });
    const after = patchedBytes(other, [spill]);
    expect(differingParts(other, after)).toEqual(['xl/worksheets/sheet2.xml']);
    expect(partText(after, 'xl/worksheets/sheet2.xml')).toContain(
      '<c r="A10" t="str"><f t="array" ref="A10:A11">',
    );
  });
});

describe('shared formulas and the calculation chain', () => {
  const shared = withParts(original, {
    'xl/worksheets/sheet3.xml': (text) =>
      text.replace(
        '</sheetData>',
        '<row r="5"><c r="A5"><f t="shared" ref="A5:A7" si="0">B5*$C$1+LOG10(B5)</f><v>1</v></c></row><row r="6" spans="1:1"><c r="A6"><f t="shared" si="0"/><v>2</v></c></row><row r="7"><c r="A7"><f t="shared" si="0"/><v>3</v></c></row></sheetData>',
      ),
    'xl/calcChain.xml': () =>
      '<calcChain xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><c r="A5" i="3"/></calcChain>',
    '[Content_Types].xml': (text) =>
      text.replace(
        '</Types>',
        '<Override PartName="/xl/calcChain.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.calcChain+xml"/></Types>',
      ),
    'xl/_rels/workbook.xml.rels': (text) =>
      text.replace(
        '</Relationships>',
        '<Relationship Id="rId77" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/calcChain" Target="calcChain.xml"/></Relationships>',
      ),
  });
  const notes = "Maker's notes";

  it('reads each cell’s own formula', () => {
    expect(cellAt(imageOf(shared), notes, 'A6')?.formula).toBe('=B6*$C$1+LOG10(B6)');
  });

  it('gives the others their own formula when the keeping cell is overwritten', () => {
    const after = imageOf(patchedBytes(shared, [edits(notes, { A5: 10 })]));
    expect(cellAt(after, notes, 'A5')).toMatchObject({ value: 10 });
    expect(cellAt(after, notes, 'A6')).toMatchObject({ formula: '=B6*$C$1+LOG10(B6)', value: 2 });
    expect(cellAt(after, notes, 'A7')).toMatchObject({ formula: '=B7*$C$1+LOG10(B7)', value: 3 });
  });

  it('drops the chain when a formula goes, and keeps it when only values change', () => {
    expect(differingParts(shared, patchedBytes(shared, [edits(notes, { A5: 10 })]))).toEqual([
      '[Content_Types].xml',
      'xl/_rels/workbook.xml.rels',
      'xl/calcChain.xml',
      'xl/worksheets/sheet3.xml',
    ]);
    const values = patchedBytes(shared, [edits(notes, { B5: 10, C6: 1 })]);
    expect(differingParts(shared, values)).toEqual(['xl/worksheets/sheet3.xml']);
    expect(partText(values, 'xl/worksheets/sheet3.xml')).not.toContain('spans=');
  });
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

describe('odd but allowed ways to write a sheet', () => {
  const main = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"';
  const asSheet = (xml: string) => withParts(original, { 'xl/worksheets/sheet3.xml': () => xml });
  it.each([
    ['no rows at all', `<worksheet ${main}><sheetData/></worksheet>`],
    [
      'a prefix',
      `<x:worksheet ${main.replace('xmlns', 'xmlns:x')}><x:sheetData><x:row r="2"><x:c r="B2" s="1"><x:v>1</x:v></x:c></x:row></x:sheetData></x:worksheet>`,
    ],
    [
      'an empty row',
      `<worksheet ${main}><sheetData><row r="1" spans="1:2" ht="20"/><row r="3"/></sheetData></worksheet>`,
    ],
    [
      'no addresses',
      `<worksheet ${main}><sheetData><row><c><v>1</v></c><c><v>2</v></c></row><row><c><v>3</v></c></row></sheetData></worksheet>`,
    ],
    [
      'single quotes and line ends',
      `<?xml version='1.0' encoding='UTF-8'?>\r\n<worksheet ${main.replaceAll('"', "'")}>\r\n <sheetData>\r\n  <row r='1'>\r\n   <c r='A1' t='n'><v>1</v></c>\r\n  </row>\r\n </sheetData>\r\n</worksheet>`,
    ],
  ])('%s', (_what, xml) => {
    const wanted = { A1: 'a', B1: 2, C1: '=x', B2: true, D9: 0.1 };
    const after = imageOf(patchedBytes(asSheet(xml), [edits("Maker's notes", wanted)]));
    for (const [name, value] of Object.entries(wanted)) {
      expect(cellAt(after, "Maker's notes", name)?.value, name).toBe(value);
    }
  });
});

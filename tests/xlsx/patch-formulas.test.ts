import { describe, expect, it } from 'vitest';
import type { SheetEdits } from '../../src/xlsx/image.ts';
import { writeWorkbook } from '../../src/xlsx/write/write-workbook.ts';
import { sample } from './sample.ts';
import {
  byExcelJs,
  cellAt,
  differingParts,
  edits,
  imageOf,
  partText,
  patchedBytes,
  refusalOf,
  withParts,
} from './support.ts';

const original = writeWorkbook(sample);

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

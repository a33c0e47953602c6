import { describe, expect, it } from 'vitest';
import type { SheetEdits } from '../../src/xlsx/image.ts';
import { writeWorkbook } from '../../src/xlsx/write/write-workbook.ts';
import { sample } from './sample.ts';
import {
  cellAt,
  differingParts,
  edits,
  imageOf,
  partText,
  patchedBytes,
  withParts,
} from './support.ts';

const original = writeWorkbook(sample);

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

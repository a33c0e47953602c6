import { deflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readWorkbook } from '../../src/xlsx/read/read-workbook.ts';
import { patchWorkbook } from '../../src/xlsx/patch/patch-workbook.ts';
import { writeWorkbook } from '../../src/xlsx/write/write-workbook.ts';
import { pack, writeZip } from '../../src/xlsx/zip/zip-write.ts';
import { readZip } from '../../src/xlsx/zip/zip-read.ts';
import { sample } from './sample.ts';
import { imageOf, withParts } from './support.ts';

const good = writeWorkbook(sample);
const entries = readZip(good);
const bytesOf = (text: string) => new TextEncoder().encode(text);
const sheet = 'xl/worksheets/sheet1.xml';
const MAIN = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"';
const withSheet = (xml: string) => withParts(good, { [sheet]: () => xml });

/** An entry that claims `size` bytes and holds `zeros` of them. */
function bomb(name: string, size: number, zeros: number) {
  const packed = deflateRawSync(new Uint8Array(zeros));
  return { ...pack(name, new Uint8Array(0)), packed, size };
}

const HUGE = 300 * 1024 * 1024;

describe('files that are refused with a sentence', () => {
  it.each([
    ['nothing', new Uint8Array(0), /not an \.xlsx/],
    ['text', bytesOf('Material,Kind\nBase,base\n'.repeat(9)), /not an \.xlsx/],
    [
      'an old or encrypted file',
      Uint8Array.of(0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1),
      /old \.xls.*password/,
    ],
    ['a zip of something else', writeZip([pack('readme.txt', bytesOf('hi'))]), /not an \.xlsx/],
    ['a cut-off file', good.subarray(0, good.length - 300), /not an \.xlsx|damaged/],
    ['a part that claims too much', writeZip([...entries, bomb('xl/a.xml', HUGE, 10)]), /far more/],
    [
      'a part packed beyond reason',
      writeZip([...entries, bomb('xl/a.xml', 60_000_000, 60_000_000)]),
      /far more/,
    ],
    [
      'parts that together are too much',
      writeZip([
        ...entries,
        ...[1, 2, 3, 4, 5].map((n) => ({
          ...pack(`xl/${n}.xml`, new Uint8Array(0)),
          packed: new Uint8Array(700_000),
          size: 200_000_000,
        })),
      ]),
      /far more/,
    ],
    [
      'a sheet larger than it claims',
      writeZip(
        entries.map((entry) => (entry.name === sheet ? bomb(sheet, 100, 9_000_000) : entry)),
      ),
      /damaged or larger/,
    ],
    [
      'a wrong checksum',
      writeZip(entries.map((entry) => (entry.name === sheet ? { ...entry, crc: 1 } : entry))),
      /checksum/,
    ],
    [
      'too many parts',
      writeZip([
        ...entries,
        ...Array.from({ length: 5_001 }, (_, n) => pack(`x/${n}`, new Uint8Array(0))),
      ]),
      /more than 5000 parts/,
    ],
    ['a part twice', writeZip([...entries, pack('XL/workbook.xml', bytesOf('<a/>'))]), /twice/],
    ...[
      '../evil.xml',
      '/etc/passwd',
      'xl/../../evil',
      'C:\\evil.xml',
      'xl\\evil.xml',
      'xl/./a',
      'a\u0000b',
      '',
    ].map((name): [string, Uint8Array, RegExp] => [
      `the part name ${JSON.stringify(name)}`,
      writeZip([...entries, pack(name, bytesOf('x'))]),
      /unsafe path/,
    ]),
    [
      'a macro-enabled type',
      withParts(good, {
        '[Content_Types].xml': (text) =>
          text.replace(
            'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml',
            'application/vnd.ms-excel.sheet.macroEnabled.main+xml',
          ),
      }),
      /macros/,
    ],
    ['a macro part', writeZip([...entries, pack('xl/vbaProject.bin', bytesOf('x'))]), /macros/],
    [
      'a template',
      withParts(good, {
        '[Content_Types].xml': (text) => text.replace('sheet.main+xml', 'template.main+xml'),
      }),
      /template or another kind/,
    ],
    [
      'an entity',
      withSheet(`<!DOCTYPE x [<!ENTITY a "b">]><worksheet ${MAIN}><sheetData/></worksheet>`),
      /document type/,
    ],
    [
      'an outside DTD',
      withSheet(`<!DOCTYPE x SYSTEM "file:///etc/passwd"><worksheet ${MAIN}/>`),
      /document type/,
    ],
    [
      'an undeclared entity',
      withSheet(
        `<worksheet ${MAIN}><sheetData><row r="1"><c r="A1" t="str"><v>&xxe;</v></c></row></sheetData></worksheet>`,
      ),
      /damaged/,
    ],
    [
      'another encoding',
      withSheet(`<?xml version="1.0" encoding="UTF-16"?><worksheet ${MAIN}/>`),
      /UTF-8/,
    ],
    ['broken XML', withSheet(`<worksheet ${MAIN}><sheetData>`), /damaged/],
    [
      'deep nesting',
      withSheet(`<worksheet ${MAIN}>${'<a>'.repeat(5_000)}${'</a>'.repeat(5_000)}</worksheet>`),
      /too deeply/,
    ],
    [
      'a row beyond the sheet',
      withSheet(`<worksheet ${MAIN}><sheetData><row r="99999999"/></sheetData></worksheet>`),
      /no sheet can have/,
    ],
    [
      'a column beyond the sheet',
      withSheet(
        `<worksheet ${MAIN}><sheetData><row r="1"><c r="ZZZ1"/></row></sheetData></worksheet>`,
      ),
      /no sheet can have/,
    ],
    [
      'rows out of order',
      withSheet(`<worksheet ${MAIN}><sheetData><row r="2"/><row r="1"/></sheetData></worksheet>`),
      /no sheet can have/,
    ],
    [
      'a number that is none',
      withSheet(
        `<worksheet ${MAIN}><sheetData><row r="1"><c r="A1"><v>12,5</v></c></row></sheetData></worksheet>`,
      ),
      /A1 holds "12,5"/,
    ],
    [
      'a missing text',
      withSheet(
        `<worksheet ${MAIN}><sheetData><row r="1"><c r="A1" t="s"><v>7</v></c></row></sheetData></worksheet>`,
      ),
      /text number 7/,
    ],
    ['a missing sheet', withParts(good, { [sheet]: undefined }), /sheet "Stock" is missing/],
    [
      'dates from 1904',
      withParts(good, {
        'xl/workbook.xml': (text) => text.replace('<workbookPr ', '<workbookPr date1904="1" '),
      }),
      /1904/,
    ],
  ] as readonly [string, Uint8Array, RegExp][])('%s', (_what, bytes, sentence) => {
    const read = readWorkbook(bytes, 'book.xlsx');
    expect(read.kind).toBe('refused');
    expect(read.kind === 'refused' && read.sentence).toMatch(sentence);
    const edit = { sheet: 'Stock', cells: [{ row: 0, column: 9, value: 1 }], tables: [] };
    const patched = patchWorkbook(bytes, [edit]);
    // A patch looks at no other cell's value; what it gives is then as unreadable as before.
    const still = patched.kind === 'refused' ? patched : readWorkbook(patched.bytes, 'book.xlsx');
    expect(still.kind).toBe('refused');
  });
});

describe('files that are defused', () => {
  it('a huge dimension costs nothing', () => {
    const image = imageOf(
      withParts(good, {
        [sheet]: (text) =>
          text
            .replace(/<dimension[^>]*>/, '<dimension ref="A1:XFD1048576"/>')
            .replace(/<cols>.*<\/cols>/, '<cols><col min="1" max="16384" width="9"/></cols>'),
      }),
    );
    expect(image.sheets[0]?.cells).toHaveLength(20);
    expect(image.sheets[0]?.columnWidths).toEqual({});
  });

  it('a link to another workbook is named and never opened', () => {
    const linked = withParts(good, {
      'xl/externalLinks/externalLink1.xml': () => `<externalLink ${MAIN}/>`,
      'xl/_rels/workbook.xml.rels': (text) =>
        text.replace(
          '</Relationships>',
          '<Relationship Id="rId90" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/externalLink" Target="externalLinks/externalLink1.xml"/></Relationships>',
        ),
    });
    expect(imageOf(linked).notShown).toContain(
      'links to 1 other workbook: kept, never opened from here',
    );
  });

  it('a picture from outside is not followed', () => {
    const linked = withParts(good, {
      'xl/drawings/_rels/drawing1.xml.rels': (text) =>
        text.replace(
          '</Relationships>',
          '<Relationship Id="rId91" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/image" Target="https://example.invalid/a.png" TargetMode="External"/></Relationships>',
        ),
    });
    expect(imageOf(linked).notShown).toContain('1 picture on Answers');
  });
});

describe('random damage', () => {
  it('gives an answer or a sentence, never anything else', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(good.length - 1), fc.nat(255)), { minLength: 1, maxLength: 6 }),
        (hits) => {
          const bytes = Uint8Array.from(good);
          for (const [at, value] of hits) bytes[at] = value;
          expect(['read', 'refused']).toContain(readWorkbook(bytes, 'x').kind);
        },
      ),
      { numRuns: 300 },
    );
  });

  it('in the sheet’s own text too', () => {
    const text = new TextDecoder().decode(
      new Uint8Array(
        Buffer.from(
          `<worksheet ${MAIN}><cols><col min="1" max="3" width="9"/></cols><sheetData><row r="1"><c r="A1" s="1" t="str" cm="1"><f t="array" ref="A1:B2">_xlfn.ANCHORARRAY(A1)</f><v>1</v></c></row></sheetData><mergeCells><mergeCell ref="A4:B5"/></mergeCells><dataValidations><dataValidation type="list" sqref="A1 B2:C3"><formula1>"a,b"</formula1></dataValidation></dataValidations></worksheet>`,
        ),
      ),
    );
    fc.assert(
      fc.property(
        fc.nat(text.length - 1),
        fc.constantFrom('', '"', '<', '>', '9', '-', 'A', ':', '&', '\u0000', '[', '('),
        (at, piece) => {
          const bytes = withSheet(text.slice(0, at) + piece + text.slice(at + 1));
          expect(['read', 'refused']).toContain(readWorkbook(bytes, 'x').kind);
          const patch = patchWorkbook(bytes, [
            { sheet: 'Stock', cells: [{ row: 5, column: 0, value: 'x' }], tables: [] },
          ]);
          expect(['patched', 'refused']).toContain(patch.kind);
        },
      ),
      { numRuns: 300 },
    );
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { describeValues } from '../../src/hosts/files/value-workbook.ts';
import { readTables } from '../../src/xlsx/read/read-tables.ts';
import { readWorkbook } from '../../src/xlsx/read/read-workbook.ts';
import { writeWorkbook } from '../../src/xlsx/write/write-workbook.ts';
import { readZip, type ZipEntry } from '../../src/xlsx/zip/zip-read.ts';
import { pack, writeZip } from '../../src/xlsx/zip/zip-write.ts';
import { partsOf, withParts } from './support.ts';
import { sample } from './sample.ts';

/** A copy such as someone might send: real parts, then bent. */
const sent = writeWorkbook(
  describeValues({
    fileName: 'sent',
    title: 'Sent',
    sheets: ['Lots', 'LedgerLines'].map((name) => ({
      name,
      lines: [],
      table: `T_${name}`,
      columns: [
        { header: 'Entry', format: 'text' },
        { header: 'When', format: 'date' },
        { header: 'Quantity', format: 'number' },
      ],
      rows: Array.from({ length: 12 }, (_, row) => [
        `${name}-${String(row)}`,
        46000 + row,
        row / 4,
      ]),
    })),
  }),
);
const files = [sent, writeWorkbook(sample)] as const;
const entriesOf = new Map(files.map((bytes) => [bytes, readZip(bytes)]));
const textsOf = new Map(files.map((bytes) => [bytes, partsOf(bytes)]));
const anyFile = fc.constantFrom(...files);

/** Both doors answer with a workbook or a sentence. Whatever they throw fails the test. */
function expectAnswer(bytes: Uint8Array): void {
  for (const answer of [readTables(bytes), readWorkbook(bytes, 'x.xlsx')]) {
    if (answer.kind === 'refused') expect(answer.sentence).toMatch(/[.!]$/u);
    else expect(answer.kind).toBe('read');
  }
}

/** A change to the list of a package's parts. */
type Bend = (entries: readonly ZipEntry[]) => readonly ZipEntry[];

const names = [...new Set([...entriesOf.values()].flat().map(({ name }) => name))];
const trickyNames = [
  ...names,
  '../../etc/passwd',
  '/xl/workbook.xml',
  'xl\\workbook.xml',
  'C:/x.xml',
  'xl/./workbook.xml',
  'XL/WORKBOOK.XML',
  'xl/vbaProject.bin',
  '',
  'xl/\u0000.xml',
];
const anyBend: fc.Arbitrary<Bend> = fc.oneof(
  fc.tuple(fc.nat(40), fc.constantFrom(...trickyNames)).map(
    ([at, name]): Bend =>
      (entries) =>
        entries.map((entry, index) => (index === at % entries.length ? { ...entry, name } : entry)),
  ),
  fc.nat(40).map(
    (at): Bend =>
      (entries) =>
        entries.flatMap((entry, index) =>
          index === at % entries.length ? [entry, entry] : [entry],
        ),
  ),
  fc.nat(40).map(
    (at): Bend =>
      (entries) =>
        entries.filter((_, index) => index !== at % entries.length),
  ),
  fc.tuple(fc.nat(40), fc.nat(40)).map(
    ([from, to]): Bend =>
      (entries) =>
        entries.map((entry, index) =>
          index === to % entries.length
            ? { ...(entries[from % entries.length] ?? entry), name: entry.name }
            : entry,
        ),
  ),
  fc.tuple(fc.nat(40), fc.nat(0xffffffff)).map(
    ([at, size]): Bend =>
      (entries) =>
        entries.map((entry, index) => (index === at % entries.length ? { ...entry, size } : entry)),
  ),
);

/** Text that a part may be given in place of some of its own. */
const pieces = [
  '',
  '<',
  '>',
  '"',
  '&',
  '&#0;',
  '&bomb;',
  '<!DOCTYPE x [<!ENTITY bomb "&bomb;&bomb;">]>',
  '<![CDATA[',
  '</worksheet>',
  ' r="XFD1048577"',
  ' ref="A1:XFD1048576"',
  ' ref="A0"',
  ' t="s"',
  '<v>99999999999</v>',
  '<v>-1</v>',
  '<f>WEBSERVICE("http://example.invalid")</f>',
  ' Target="http://example.invalid" TargetMode="External"',
  ' Target="../../../../etc/passwd"',
  '<c r="A1" t="inlineStr"><is><t>=HYPERLINK("x")</t></is></c>',
  '1e400',
  '\u0000',
  '\ufffe',
] as const;

describe('a package bent at random', () => {
  it('gives a workbook or a sentence for flipped bytes', () => {
    fc.assert(
      fc.property(
        anyFile,
        fc.array(fc.tuple(fc.nat(1_000_000), fc.nat(255)), { minLength: 1, maxLength: 8 }),
        (file, hits) => {
          const bytes = Uint8Array.from(file);
          for (const [at, value] of hits) bytes[at % bytes.length] = value;
          expectAnswer(bytes);
        },
      ),
      { numRuns: 400 },
    );
  });

  it('for a file cut off, begun late, or with something before or after it', () => {
    fc.assert(
      fc.property(
        anyFile,
        fc.nat(1_000_000),
        fc.nat(1_000_000),
        fc.uint8Array(),
        (file, a, b, more) => {
          const [from, to] = [a % file.length, b % file.length].sort((x, y) => x - y);
          expectAnswer(file.subarray(from, to));
          expectAnswer(file.subarray(0, to));
          expectAnswer(Uint8Array.from([...file, ...more]));
          expectAnswer(Uint8Array.from([...more, ...file]));
        },
      ),
      { numRuns: 100 },
    );
  });

  it('for parts renamed, doubled, lost, swapped, or of another size than they claim', () => {
    fc.assert(
      fc.property(anyFile, fc.array(anyBend, { minLength: 1, maxLength: 4 }), (file, bends) => {
        const bent = bends.reduce<readonly ZipEntry[]>(
          (entries, bend) => (entries.length === 0 ? entries : bend(entries)),
          entriesOf.get(file) ?? [],
        );
        expectAnswer(writeZip(bent));
      }),
      { numRuns: 400 },
    );
  });

  it('for text put into any part', () => {
    fc.assert(
      fc.property(
        anyFile,
        fc.array(fc.tuple(fc.nat(40), fc.nat(1_000_000), fc.nat(30), fc.constantFrom(...pieces)), {
          minLength: 1,
          maxLength: 3,
        }),
        (file, hits) => {
          const parts = new Map(textsOf.get(file));
          for (const [part, at, cut, piece] of hits) {
            const name = [...parts.keys()][part % parts.size] ?? '';
            const text = new TextDecoder().decode(parts.get(name));
            const from = at % (text.length + 1);
            const bent = text.slice(0, from) + piece + text.slice(from + cut);
            parts.set(name, new TextEncoder().encode(bent));
          }
          expectAnswer(writeZip([...parts].map(([name, bytes]) => pack(name, bytes))));
        },
      ),
      { numRuns: 500 },
    );
  });
});

describe('a copy picked for merging passes the same gate', () => {
  it('a table that claims the whole sheet gives only the rows it fills', () => {
    const wide = withParts(sent, {
      'xl/tables/table1.xml': (text) => text.replaceAll(/ref="A1:C13"/gu, 'ref="A1:C1048576"'),
    });
    const read = readTables(wide);
    expect(read.kind === 'read' && read.tables[0]?.rows.length).toBe(12);
  });

  it('a formula comes as its last result, and text that looks like one as text', () => {
    const sheet = 'xl/worksheets/sheet1.xml';
    const cell = /<c r="A2"[^>]*>.*?<\/c>/u;
    const formula = '<c r="A2" t="str"><f>HYPERLINK("http://example.invalid")</f><v>Lots-0</v></c>';
    const note = '<c r="A2" t="inlineStr"><is><t>=1+1</t></is></c>';
    const first = (xml: string) => {
      const read = readTables(withParts(sent, { [sheet]: (text) => text.replace(cell, xml) }));
      return read.kind === 'read' ? read.tables[0]?.rows[0]?.[0] : read.sentence;
    };
    expect([first(formula), first(note)]).toEqual(['Lots-0', '=1+1']);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainRow } from '../../src/xlsx/read/plain-row.ts';
import { Refusal } from '../../src/xlsx/refusal.ts';
import { walkSheet } from '../../src/xlsx/read/sheet-walk.ts';

/** Everything a walk tells, each place as the text that stands there; or why it was refused. */
function told(source: string): { readonly events: readonly unknown[]; readonly plainRows: number } {
  const events: unknown[] = [];
  const same = (text: string) => text.replaceAll('</row >', CLOSE);
  const cut = (start: number, end: number) => same(source.slice(start, end));
  let plainRows = 0;
  try {
    walkSheet('sheet', source, {
      cell({ start, end, formula, ...cell }) {
        const held = formula && { ...formula, start: cut(formula.start, formula.end), end: 0 };
        events.push(['cell', cut(start, end), cell, held]);
      },
      row({ start, openEnd, closeStart, end, plain, ...row }) {
        if (plain) plainRows += 1;
        events.push(['row', row, cut(start, openEnd), cut(openEnd, closeStart), cut(start, end)]);
      },
      open: (name, attributes, start, end) =>
        events.push(['open', name, attributes, cut(start, end)]),
      close: (name, start, end) => events.push(['close', name, cut(start, end)]),
      text: (text) => events.push(['text', same(text)]),
    });
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    // How far each got before the fault does not matter: nothing is made of it.
    return { events: [error.message], plainRows };
  }
  return { events, plainRows };
}

const CLOSE = '</row>';
/** The same sheet in a spelling that only the strict walk reads. */
const spelledOut = (source: string) => source.replaceAll(CLOSE, '</row >');
const sheet = (data: string) =>
  `<?xml version="1.0"?><worksheet><dimension ref="A1"/><sheetData>${data}</sheetData><mergeCells/></worksheet>`;

const text = fc.oneof(
  {
    arbitrary: fc.string({ maxLength: 6 }).map((plain) => plain.replace(/[<>&]/g, '')),
    weight: 20,
  },
  fc.constantFrom(
    '',
    ' ',
    '1',
    'ü',
    '🧼',
    'a\r\nb',
    '\n',
    '\t',
    '&amp;',
    ']]>',
    '&none;',
    '<',
    '\0',
  ),
  fc.constantFrom('\u0085', '\u2028', '\uffff', '\ud83e', '<![CDATA[<row>]]>', '<!-- </row> -->'),
);
const body = fc.oneof(
  { arbitrary: text.map((each) => `<v>${each}</v>`), weight: 20 },
  { arbitrary: text.map((each) => `<is><t>${each}</t></is>`), weight: 20 },
  text.map((each) => `<is><t xml:space="preserve">${each}</t></is>`),
  text.map((each) => `<is><t>a</t><rPh><t>${each}</t></rPh></is>`),
  fc.constantFrom('', '<f>A1</f><v>2</v>', '<v>1</v><v>2</v>', '<v>', '<v/>', '<is/>', ' '),
);
const rest = fc.constantFrom(
  '',
  '',
  '',
  ' s="3"',
  ' t="s"',
  ' s="3" t="str"',
  ' t="b" s="1"',
  ' x',
);
const cell = (row: number, column: number) =>
  fc.tuple(rest, body, fc.nat(100)).map(([attributes, held, odd]) => {
    const at = odd === 0 ? '' : ` r="${'ABCDEF'[odd === 1 ? 0 : column]}${odd === 2 ? 9 : row}"`;
    return odd === 3 ? `<c${at}${attributes}/>` : `<c${at}${attributes}>${held}</c>`;
  });
const row = (number: number) =>
  fc
    .tuple(
      fc.constantFrom('', '', '', ' spans="1:3"', ' ht="20" customHeight="1"', ' r="7"', ' ht=20'),
      fc.tuple(...[0, 1, 2].map((column) => cell(number, column))),
      fc.constantFrom(
        '',
        '',
        '',
        '',
        '\n',
        '<!-- <row r="1"></row> -->',
        '<c r="F1"/>',
        '<row r="20"/>',
      ),
      fc.nat(60),
    )
    .map(([attributes, cells, after, odd]) => {
      const at = odd === 0 ? '' : ` r="${odd === 1 ? 1 : number}"`;
      return `<row${at}${attributes}>${cells.join('')}${odd === 2 ? '' : CLOSE}${after}`;
    });

describe('a plain row', () => {
  it('is told as the strict walk tells it, and refused with the same sentence', () => {
    let plainRows = 0;
    fc.assert(
      fc.property(fc.tuple(row(1), row(2), row(4)), (rows) => {
        const source = sheet(rows.join(''));
        const quick = told(source);
        const strict = told(spelledOut(source));
        expect(strict.plainRows).toBe(0);
        expect(quick.events).toEqual(strict.events);
        plainRows += quick.plainRows;
      }),
      { numRuns: 1_500 },
    );
    expect(plainRows).toBeGreaterThan(200);
  });

  it.each([
    ['in a comment', '<worksheet><!--<sheetData><row r="1"></row></sheetData>--></worksheet>'],
    ['in literal text', '<worksheet><a><![CDATA[<sheetData><row r="1"></row>]]></a></worksheet>'],
    [
      'below another element',
      '<worksheet><a><sheetData><row r="1"></row></sheetData></a></worksheet>',
    ],
    ['in an attribute', '<worksheet a="<sheetData><row r=\'1\'></row>"/>'],
  ])('%s is left to the strict walk', (_where, source) => {
    expect(told(source)).toMatchObject({ plainRows: 0, events: told(spelledOut(source)).events });
  });

  it.each([
    [
      'values, texts and blanks',
      '<row r="2" spans="1:3"><c r="A2" s="4"/><c r="C2" t="s"><v>0</v></c></row>',
      2,
    ],
    ['no cells', '<row r="2"></row>', 0],
    ['an entity', '<row r="2"><c r="A2"><v>&lt;</v></c></row>', undefined],
    ['a formula', '<row r="2"><c r="A2"><f>1</f></c></row>', undefined],
    ['a cell of another row', '<row r="2"><c r="A3"><v>1</v></c></row>', undefined],
    ['cells out of order', '<row r="2"><c r="B2"/><c r="A2"/></row>', undefined],
    ['a column no sheet has', '<row r="2"><c r="ZZZ2"/></row>', undefined],
    ['an attribute twice', '<row r="2" r="2"></row>', undefined],
    ['no end', '<row r="2"><c r="A2"/>', undefined],
  ])('with %s', (_what, source, cells) => {
    expect(plainRow(source, 0)?.cells.length).toBe(cells);
  });

  it.each([
    '<',
    '>',
    '&',
    '\0',
    '\b',
    '\v',
    '\f',
    '\r',
    '\u007f',
    '\u0085',
    '\u2028',
    '\uffff',
    '🧼',
  ])('is not read by itself with %j in a text', (character) => {
    const row = (held: string) => `<row r="1"><c r="A1"><is><t>a${held}b</t></is></c></row>`;
    expect(plainRow(row(character), 0)).toBeUndefined();
    expect(plainRow(row('\t\n\u00e9'), 0)).toBeDefined();
  });
});

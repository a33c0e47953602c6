import { describe, expect, it } from 'vitest';
import { MAX_RANGES, MAX_REACH, MAX_SHEETS } from '../../src/xlsx/limits.ts';
import { readTables } from '../../src/xlsx/read/read-tables.ts';
import { readWorkbook } from '../../src/xlsx/read/read-workbook.ts';
import { writeWorkbook } from '../../src/xlsx/write/write-workbook.ts';
import { WHOLE, withAfterCells, withLists, withMerges } from './far-reaching.ts';
import { imageOf, partText, withParts } from './support.ts';

const book = writeWorkbook({
  sheets: [{ name: 'Notes', cells: [{ row: 4, column: 2, value: 'x' }] }],
});
const shown = { startRow: 0, startColumn: 0, endRow: 204, endColumn: 25 };
const sentenceOf = (bytes: Uint8Array) => {
  const read = readWorkbook(bytes, 'book.xlsx');
  return read.kind === 'refused' ? read.sentence : read.kind;
};

/** A workbook whose list of sheets names its one part, or as many parts, this many times. */
function manySheets(count: number, isOnePart: boolean): Uint8Array {
  const numbers = Array.from({ length: count }, (_, at) => at + 1);
  const parts = isOnePart
    ? {}
    : Object.fromEntries(
        numbers.map((n) => [
          `xl/worksheets/more${String(n)}.xml`,
          () => partText(book, 'xl/worksheets/sheet1.xml'),
        ]),
      );
  return withParts(book, {
    ...parts,
    'xl/workbook.xml': (text) =>
      text.replace(
        /<sheets>.*<\/sheets>/,
        `<sheets>${numbers.map((n) => `<sheet name="S${String(n)}" sheetId="${String(n)}" r:id="more${String(n)}"/>`).join('')}</sheets>`,
      ),
    'xl/_rels/workbook.xml.rels': (text) =>
      text.replace(
        '</Relationships>',
        numbers
          .map(
            (n) =>
              `<Relationship Id="more${String(n)}" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/${isOnePart ? 'sheet1' : `more${String(n)}`}.xml"/>`,
          )
          .join('') + '</Relationships>',
      ),
  });
}

describe('one line that claims a whole sheet', () => {
  it('of merged cells reaches as far as the sheet is shown', () => {
    expect(imageOf(withMerges(book, [WHOLE])).sheets[0]?.merges).toEqual([shown]);
  });

  it('of a list reaches as far as the sheet is shown, and so do its choices', () => {
    const [sheet] = imageOf(withLists(book, [[WHOLE, '$A:$C']])).sheets;
    expect(sheet?.validations).toEqual([
      { range: shown, choices: { sheet: 'Notes', range: { ...shown, endColumn: 2 } } },
    ]);
  });

  it('of a highlight reaches as far as the sheet is shown', () => {
    const xml = `<conditionalFormatting sqref="${WHOLE}"><cfRule type="expression" dxfId="0" priority="1"><formula>A1=1</formula></cfRule></conditionalFormatting>`;
    const styled = withParts(withAfterCells(book, xml), {
      'xl/styles.xml': (text) =>
        text
          .replace(/<dxfs[^>]*\/>|<dxfs.*<\/dxfs>/s, '')
          .replace(
            '</styleSheet>',
            '<dxfs count="1"><dxf><font><b/></font></dxf></dxfs></styleSheet>',
          ),
    });
    expect(imageOf(styled).sheets[0]?.highlights).toMatchObject([{ ranges: [shown] }]);
  });

  it('is left out, and said to be, where the sheet itself reaches that far', () => {
    const far = writeWorkbook({
      sheets: [{ name: 'Notes', cells: [{ row: 1_000_000, column: 10, value: 'x' }] }],
    });
    expect(MAX_REACH).toBeLessThan(10_000_000);
    const { sheets, notShown } = imageOf(withLists(far, [[WHOLE, '"a,b"']]));
    expect(sheets[0]?.validations).toEqual([]);
    expect(notShown).toContain('1 merge, list or highlight that reaches too far on Notes');
  });

  it('of choices too many to choose from is no list', () => {
    const far = writeWorkbook({
      sheets: [{ name: 'Notes', cells: [{ row: 1_000_000, column: 0, value: 'x' }] }],
    });
    expect(imageOf(withLists(far, [['B1', '$A:$A']])).sheets[0]?.validations).toEqual([]);
  });
});

describe('a workbook is refused with a sentence', () => {
  it('when two of its sheets stand on one part', () => {
    expect(sentenceOf(manySheets(1000, true))).toMatch(/more than 300 sheets/);
    expect(sentenceOf(manySheets(2, true))).toMatch(
      /part "xl\/worksheets\/sheet1.xml" stands in two/,
    );
    const tables = readTables(manySheets(2, true));
    expect(tables.kind).toBe('refused');
  });

  it('when it has more sheets than anybody looks through', () => {
    expect(sentenceOf(manySheets(MAX_SHEETS, false))).toBe('read');
    expect(sentenceOf(manySheets(MAX_SHEETS + 1, false))).toMatch(/more than 300 sheets/);
  });

  it('when it has more merges, lists and highlights than can be', () => {
    const merges = Array.from(
      { length: MAX_RANGES + 1 },
      (_, at) => `A${String(at + 1)}:B${String(at + 1)}`,
    );
    expect(sentenceOf(withMerges(book, merges))).toMatch(/more than 100000 merges/);
  });
});

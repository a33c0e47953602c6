import { describe, expect, it } from 'vitest';
import { rangeName } from '../../src/xlsx/address.ts';
import { resolveReference } from '../../src/xlsx/read/resolve-reference.ts';
import { writeWorkbook } from '../../src/xlsx/write/write-workbook.ts';
import { sample } from './sample.ts';
import { imageOf, withParts } from './support.ts';

const original = writeWorkbook(sample);

describe('what a reference means', () => {
  const table = imageOf(original).sheets[0]?.tables[0];
  const scope = {
    tables: table ? [{ sheet: 'Stock', table }] : [],
    names: [
      { name: 'Kinds', refersTo: 'Materials[Kind]', special: false },
      { name: 'Loop', refersTo: 'Loop', special: false },
      { name: 'Rate', refersTo: '0.2', special: false },
      { name: 'Local', refersTo: 'Stock!$A$1', special: true },
    ],
  };
  it.each([
    ['$A$2:$A$9', 'Here!A2:A9'],
    ['=Stock!$B$2', 'Stock!B2'],
    ["'Maker''s notes'!A1:A3", "Maker's notes!A1:A3"],
    ['Materials[Kind]', 'Stock!B2:B4'],
    ['materials[pack price]', 'Stock!C2:C4'],
    ['Materials[#All]', 'Stock!A1:E4'],
    ['=Materials[[#Headers],[#Data]]', 'Stock!A1:E4'],
    ['materials[ [#headers], [#data] ]', 'Stock!A1:E4'],
    ['Materials', 'Stock!A2:E4'],
    ['INDIRECT("Materials[Material]")', 'Stock!A2:A4'],
    ['indirect("Kinds")', 'Stock!B2:B4'],
    ['Kinds', 'Stock!B2:B4'],
    ['Loop', undefined],
    ['Rate', undefined],
    ['Local', undefined],
    ['Materials[Nothing]', undefined],
    ['Lists!$A$2:INDEX(Lists!$A$2:$A$9,MAX(1,COUNTIF(Lists!$A$2:$A$9,"?*")))', 'Lists!A2:A9'],
    ['OFFSET(A1,1,0)', undefined],
    ['INDIRECT(A1)', undefined],
    ['[1]Other!A1', undefined],
  ])('%s is %s', (text, place) => {
    const found = resolveReference(text, 'Here', scope);
    expect(found && `${found.sheet}!${rangeName(found.range)}`).toBe(place);
  });
});

describe('drop-downs of a later form', () => {
  it('are read from the extension list, and other checks are only named', () => {
    const image = imageOf(
      withParts(original, {
        'xl/worksheets/sheet3.xml': (text) =>
          text.replace(
            '</worksheet>',
            '<extLst><ext uri="{CCE6A557-97BC-4b89-ADB6-D9C93CAAB3DF}" xmlns:x14="http://schemas.microsoft.com/office/spreadsheetml/2009/9/main" xmlns:xm="http://schemas.microsoft.com/office/excel/2006/main"><x14:dataValidations count="2"><x14:dataValidation type="list"><x14:formula1><xm:f>Stock!$A$2:$A$4</xm:f></x14:formula1><xm:sqref>B2:B3 D4</xm:sqref></x14:dataValidation><x14:dataValidation type="whole"><x14:formula1><xm:f>1</xm:f></x14:formula1><xm:sqref>E1</xm:sqref></x14:dataValidation></x14:dataValidations></ext></extLst></worksheet>',
          ),
      }),
    );
    const notes = image.sheets[2];
    expect(notes?.validations.map(({ range }) => rangeName(range))).toEqual(['B2:B3', 'D4']);
    expect(notes?.validations[0]?.choices).toMatchObject({ sheet: 'Stock' });
    expect(image.notShown).toContain("1 entry check on Maker's notes");
  });
});

import { expect, it } from 'vitest';
import { writeWorkbook } from '../../src/xlsx/write/write-workbook.ts';
import { sample } from './sample.ts';
import { imageOf, withParts } from './support.ts';

it('names whose cells were deleted are told, and the others are read', () => {
  const bytes = withParts(writeWorkbook(sample), {
    'xl/workbook.xml': (text) =>
      text.replace(
        '</definedNames>',
        '<definedName name="Fragrances">#REF!</definedName>' +
          '<definedName name="Old">Stock!#REF!</definedName>' +
          '<definedName name="_xlnm.Print_Area" localSheetId="0">#REF!</definedName></definedNames>',
      ),
  });
  const { names, brokenNames } = imageOf(bytes);
  expect(brokenNames).toEqual(['Fragrances', 'Old']);
  expect(names.map(({ name }) => name)).toContain('Book');
});

import fc from 'fast-check';
import { expect, it } from 'vitest';
import { findingSentence } from '../../../src/workbook/read/findings.ts';
import { placeOfFinding } from '../../../src/workbook/read/place-of-finding.ts';
import { type TableKind, tableKinds, tables } from '../../../src/workbook/schema.ts';

const headersOf = (kind: TableKind) =>
  Object.values(tables[kind].columns).map(({ header }) => header);
const placed = tableKinds.flatMap((kind) => headersOf(kind).map((header) => ({ kind, header })));

it('finds the cell of every sentence that names one', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...placed),
      fc.integer({ min: 1, max: 200_000 }),
      fc.string(),
      ({ kind, header }, row, said) => {
        const says = `is "${said}". Mend it`;
        const sentence = findingSentence({ table: tables[kind].name, row, column: header, says });
        expect(placeOfFinding(sentence)).toEqual({ kind, row, header });
      },
    ),
  );
});

it.each([
  ['And 7 more.', undefined],
  ['The workbook has no Moves table.', undefined],
  ['Materials has no column Unit.', undefined],
  ['Chairs, row 2, Leg is blank.', undefined],
  ['Layers, row 3 needs a mold.', { kind: 'layers', row: 3 }],
])('reads %s', (sentence, place) => {
  expect(placeOfFinding(sentence)).toEqual(place);
});

import { withParts } from './support.ts';

/** A whole sheet: 17 thousand million cells. */
export const WHOLE = 'A1:XFD1048576';

/** The workbook with XML behind the cells of its first sheet. */
export const withAfterCells = (bytes: Uint8Array, xml: string): Uint8Array =>
  withParts(bytes, {
    'xl/worksheets/sheet1.xml': (text) =>
      text.replace(/<\/sheetData>|<sheetData\/>/, (end) => end + xml),
  });

/** The workbook with these ranges merged on its first sheet. */
export const withMerges = (bytes: Uint8Array, ranges: readonly string[]): Uint8Array =>
  withAfterCells(
    bytes,
    `<mergeCells>${ranges.map((ref) => `<mergeCell ref="${ref}"/>`).join('')}</mergeCells>`,
  );

/** The workbook with lists on its first sheet: where, and from what they take their choices. */
export const withLists = (
  bytes: Uint8Array,
  lists: readonly (readonly [range: string, source: string])[],
): Uint8Array =>
  withAfterCells(
    bytes,
    `<dataValidations>${lists
      .map(
        ([range, source]) =>
          `<dataValidation type="list" sqref="${range}"><formula1>${source}</formula1></dataValidation>`,
      )
      .join('')}</dataValidations>`,
  );

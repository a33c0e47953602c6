import { describe, expect, it } from 'vitest';
import { functions } from '../../functions/index.ts';
import { rangeName } from '../../src/xlsx/address.ts';
import type { RangeImage, WorkbookImage } from '../../src/xlsx/image.ts';
import { resolveReference } from '../../src/xlsx/read/resolve-reference.ts';
import { writeWorkbook } from '../../src/xlsx/write/write-workbook.ts';
import type { Cell } from '../../src/workbook/port.ts';
import { demoWorkbook } from '../../src/starter/starter-workbook.ts';
import { imageOf, withParts } from '../xlsx/support.ts';
import { build } from './built.ts';

const { described } = build(demoWorkbook);
const tables = described.sheets.flatMap(({ name: sheet, tables: own = [] }) =>
  own.map((table) => ({ sheet, table })),
);
type Tabled = (typeof tables)[number];

/** The demo's file with the Total Row of one table ticked. */
function withTotalRow({ sheet, table }: Tabled): WorkbookImage {
  const row = table.row + table.rows.length + 1;
  const last = table.column + table.columns.length - 1;
  const sheets = described.sheets.map((each) =>
    each.name === sheet
      ? {
          ...each,
          cells: [
            ...(each.cells ?? []),
            { row, column: table.column, value: 'Total' },
            { row, column: last, value: 42 },
          ],
        }
      : each,
  );
  const bytes = writeWorkbook({ ...described, sheets });
  const part = `xl/tables/table${String(tables.findIndex((each) => each.table === table) + 1)}.xml`;
  const ref = { startRow: table.row, startColumn: table.column, endColumn: last };
  return imageOf(
    withParts(bytes, {
      [part]: (text) => {
        expect(text).toContain(`displayName="${table.name}"`);
        return text
          .replaceAll(rangeName({ ...ref, endRow: row - 1 }), rangeName({ ...ref, endRow: row }))
          .replace('totalsRowShown="0"', 'totalsRowCount="1"');
      },
    }),
  );
}

const formulaIn = (image: WorkbookImage): string =>
  image.sheets
    .flatMap(({ cells }) => cells)
    .find(({ formula }) => formula?.startsWith('=POUR.BOOK('))?.formula ?? '';

/** What the Book cell hands over; `more` rows are added to each table's end. */
function bookOf(image: WorkbookImage, more = 0): unknown {
  const scope = {
    names: [],
    tables: image.sheets.flatMap(({ name: sheet, tables: own }) =>
      own.map((table) => ({ sheet, table })),
    ),
  };
  const given = formulaIn(image)
    .slice('=POUR.BOOK('.length, -1)
    .split(/,(?!\[)/u)
    .map((reference) => {
      const found = resolveReference(reference, 'Start here', scope);
      if (found === undefined) throw new Error(reference);
      return valuesOf(image, found.sheet, { ...found.range, endRow: found.range.endRow + more });
    });
  expect(given).toHaveLength(tables.length);
  return functions['BOOK']?.(...given);
}

function valuesOf(image: WorkbookImage, sheet: string, range: RangeImage): Cell[][] {
  const { startRow, startColumn, endRow, endColumn } = range;
  const rows = Array.from({ length: endRow - startRow + 1 }, () =>
    new Array<Cell>(endColumn - startColumn + 1).fill(''),
  );
  for (const { row, column, value } of image.sheets.find(({ name }) => name === sheet)?.cells ??
    []) {
    const cells = rows[row - startRow];
    if (cells !== undefined && column >= startColumn && column <= endColumn)
      cells[column - startColumn] = value;
  }
  return rows;
}

describe('the Book cell with the Total Row of a table ticked', () => {
  const handle = bookOf(imageOf(writeWorkbook(described)));

  it.each(tables.map((each) => [each.table.name, each] as const))('%s', (_, each) => {
    const image = withTotalRow(each);
    expect(bookOf(image)).toBe(handle);
    // The check can fail: with the total row handed over it is another book, or none.
    let withTotals: unknown;
    try {
      withTotals = bookOf(image, 1);
    } catch {
      withTotals = undefined;
    }
    expect(withTotals).not.toBe(handle);
  });
});

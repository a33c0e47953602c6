import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findTables } from '../../src/workbook/find-tables.ts';
import type { TableData } from '../../src/workbook/port.ts';
import { findingsOnSheets, onSheets } from '../../src/workbook/sheet-words.ts';
import { bookOf } from '../taskpane/book-of.ts';
import { smallWorkshop } from '../taskpane/small-workshop.ts';

const sheets: Readonly<Record<string, string>> = {
  Materials: 'Shelf',
  Lots: 'Purchases',
  LedgerLines: 'Ledger',
};
const placed: readonly TableData[] = smallWorkshop.map((table) => {
  const sheet = sheets[table.name];
  return sheet === undefined ? table : { ...table, on: { sheet, headerRow: 3 } };
});
const names = findTables(placed);

describe('onSheets', () => {
  it.each([
    ['Fill in Pack size for Blue in Materials.', 'Fill in Pack size for Blue in Shelf.'],
    ['"Materials" is not a lot in Lots.', '"Materials" is not a lot in Purchases.'],
    ['Written to LedgerLines and Batches.', 'Written to Ledger and Batches.'],
    ['Raw Materialsack', 'Raw Materialsack'],
  ])('%s', (sentence, read) => {
    expect(onSheets(names)(sentence)).toBe(read);
  });

  it('leaves a name that is a table’s word as the maker wrote it', () => {
    const named = placed.map((table) =>
      table.name === 'Materials'
        ? { ...table, rows: [...table.rows, ['Lots of glitter', 'extra', 'g']] }
        : table,
    );
    const words = onSheets(findTables(named), bookOf(named));
    expect(words('Fill in INCI for Lots of glitter in Materials.')).toBe(
      'Fill in INCI for Lots of glitter in Shelf.',
    );
  });

  it('changes nothing in quotation marks', () => {
    fc.assert(
      fc.property(fc.stringMatching(/^[^"]*$/u), (said) => {
        expect(onSheets(names)(`"${said} in Materials"`)).toBe(`"${said} in Materials"`);
      }),
    );
  });
});

it('tells a finding by its tab and the number beside its row', () => {
  const finding = { table: 'Lots', row: 3, column: 'Quantity', says: 'is blank; see Materials' };
  expect(findingsOnSheets(names)(finding)).toEqual({
    table: 'Purchases',
    row: 6,
    column: 'Quantity',
    says: 'is blank; see Shelf',
  });
  expect(findingsOnSheets(names)({ ...finding, table: 'Layers' })).toMatchObject({
    table: 'Layers',
    row: 3,
  });
});

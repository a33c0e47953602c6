import { describe, expect, it } from 'vitest';
import type { Cell } from '../../../src/workbook/port.ts';
import { readBook, recogniseTables } from '../../../src/workbook/read/read-book.ts';
import { sure } from '../../support/ledger-of.ts';
import { ranges, table, type Tables, withCell } from '../../support/small-book.ts';

const tables: Tables = {
  Lots: table('Quantity | Lot | Material | Received | Paid', [1000, 'L-1', 'Clear base', 46000, 9]),
  Materials: table(
    'Pack size | Material | Kind | Unit | Density g/ml | Lead days',
    [1000, 'Clear base', 'base', 'g', '', 5],
    [10, 'Orange', 'fragrance', 'ml', 0.84, 5],
    [10, 'Rose', 'fragrance', 'ml', '', 5],
  ),
  Molds: table('Mold | Makes | Cavities | Fill g', ['Tray', 'tiles', 9, 90]),
  Designs: table('Design | Labour minutes', ['Tide', 10]),
  LedgerLines: table('Entry | When | Reason | Material | Quantity', [
    'M-1',
    46000,
    'used',
    'Clear base',
    -10,
  ]),
  Colours: table('Colour | Ingredient | Amount | Measure', ['Sea', 'Clear base', 10, 'g']),
};

const refusal = (name: string, row: number, header: string, cell: Cell): string => {
  const read = readBook(sure(recogniseTables(ranges(withCell(tables, name, row, header, cell)))));
  return read.ok ? 'read' : read.failure.sentence;
};

describe('an amount with its unit in a cell', () => {
  it('is not there in the book to begin with', () => {
    expect(readBook(sure(recogniseTables(ranges(tables)))).ok).toBe(true);
  });

  // 1 lb = 453.59237 g and 1 oz = 28.349523125 g: NIST Handbook 44, appendix C.
  it.each<[string, number, string, string, string]>([
    ['Lots', 1, 'Quantity', '10 lb', 'Type 4535.92: 10 lb = 4,535.92 g.'],
    ['Lots', 1, 'Quantity', '12 g', 'Type 12 alone.'],
    ['LedgerLines', 1, 'Quantity', '-1 oz', 'Type -28.3495: 1 oz = 28.3495 g.'],
    ['Materials', 1, 'Pack size', '1,2 kg', 'Type 1200: 1,2 kg = 1200 g.'],
    ['Materials', 1, 'Lead days', '2 weeks', 'Type 14: 2 weeks = 14 days.'],
    ['Molds', 1, 'Fill g', '3 oz', 'Type 85.0486: 3 oz = 85.0486 g.'],
    ['Designs', 1, 'Labour minutes', '4h', 'Type 240: 4h = 240 min.'],
    ['Colours', 1, 'Amount', '1 kg', 'Type 1000: 1 kg = 1000 g.'],
  ])('%s, row %i, %s: %s is refused with the number to type', (name, row, header, cell, says) => {
    expect(refusal(name, row, header, cell)).toBe(
      `${name}, row ${String(row)}, ${header} is "${cell}", which is not a number. ${says}`,
    );
  });

  it.each<[string, number, string, string, string]>([
    [
      'Materials',
      2,
      'Pack size',
      '4 fl oz',
      'which is not a number. Type 118.294: 4 fl oz = 118.294 ml.',
    ],
    ['Materials', 3, 'Pack size', '4 oz', 'Type 4 fl oz if it was measured, or its ml.'],
    ['Materials', 1, 'Pack size', '4 fl oz', 'Type it in g.'],
    ['Lots', 1, 'Quantity', '1,234 g', 'Type 1234 or 1.234: it can be read as either.'],
    [
      'Lots',
      1,
      'Quantity',
      '4 fl oz',
      'Type it in g, or fill in Density g/ml for Clear base in Materials.',
    ],
  ])('%s, row %i, %s: %s says what is missing', (name, row, header, cell, says) => {
    expect(refusal(name, row, header, cell)).toContain(says);
  });

  it('names no number where the row names no unit', () => {
    const unnamed = withCell(tables, 'Lots', 1, 'Material', '');
    const read = readBook(
      sure(recogniseTables(ranges(withCell(unnamed, 'Lots', 1, 'Quantity', '10 lb')))),
    );
    expect(!read.ok && read.failure.sentence).toContain(
      'is "10 lb", which is not a number. Type the number alone, in the unit that its row or header names',
    );
  });
});

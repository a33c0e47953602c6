import { describe, expect, it } from 'vitest';
import type { Cell } from '../../src/workbook/port.ts';
import { column, errorOf, loadFunctions } from '../support/worksheet-functions.ts';
import { readTables } from '../support/ledger-of.ts';
import { refusalOf } from '../support/full-workshop.ts';
import {
  ranges,
  table,
  type Tables,
  withCell,
  withRows,
  withSetting,
  workshop,
} from '../support/small-book.ts';

const call = await loadFunctions();
const bookOf = (tables: Tables): unknown => call('BOOK', ...ranges(tables));

describe('blends go at most 20 deep (contract §4)', () => {
  const chain = (deep: number): Cell[][] =>
    Array.from({ length: deep }, (_, at) => [`B${at + 1}`, at === 0 ? 'Slate' : `B${at}`, 1, 'g']);

  it.each(['from the base up', 'from the last blend down'])('whatever the order: %s', (order) => {
    const rows = (deep: number): Cell[][] =>
      order === 'from the base up' ? chain(deep) : chain(deep).reverse();
    expect(bookOf(withRows(workshop, 'Colours', ...rows(20)))).toMatch(/^book /u);
    expect(refusalOf(call, withRows(workshop, 'Colours', ...rows(21))).message).toMatch(
      /^Colours, row \d+, Colour is "B21", a blend of blends more than 20 deep\./u,
    );
  });
});

describe('a layer that stands twice alike (contract §4)', () => {
  it('is refused', () => {
    const row = ['plain bar', '1', 'Pour', 'FOAM', '', 50, 'g'];
    expect(refusalOf(call, withRows(workshop, 'Layers', row)).message).toBe(
      'Layers, row 14, Layer is "1", and row 11 says the same to the last cell. Clear one of the two, or put both amounts into one Per bar.',
    );
  });

  it.each([
    ['another amount', ['Plain Bar', '1', 'pour', 'Foam', '', 20, 'g']],
    ['another layer', ['Plain Bar', '2', 'pour', 'Foam', '', 50, 'g']],
    ['another unit', ['Plain Bar', '1', 'pour', 'White base', '', 50, 'ml']],
  ])('is not where it has %s', (_, row) => {
    expect(bookOf(withRows(workshop, 'Layers', row))).toMatch(/^book /u);
  });
});

describe('percents below 1 (contract §2)', () => {
  it.each([
    ['Materials', 'Service %', 0.95, '95 if 95 % is meant'],
    ['Designs', 'Yield %', 0.9, '90 if 90 % is meant'],
  ])('%s, %s is refused with what to type', (name, header, cell, says) => {
    expect(refusalOf(call, withCell(workshop, name, 1, header, cell)).message).toContain(says);
  });

  it('a margin too', () => {
    expect(errorOf(() => call('PRICE', 4, 0.4)).message).toContain('40 if 40 % is meant');
  });

  it('elsewhere are taken as they stand and named among the assumptions', () => {
    const [headers = [], ...rows] = workshop['Materials'] ?? [];
    const capped = [[...headers, 'Max %'], ...rows.map((row, at) => [...row, at === 4 ? 0.3 : ''])];
    const tables = withSetting(
      withCell({ ...workshop, Materials: capped }, 'Layers', 7, 'Per bar', 0.5),
      'Card fee %',
      0.029,
    );
    expect(readTables(tables).assumptions.map(({ sentence }) => sentence)).toEqual(
      expect.arrayContaining([
        'Card fee % is 0.029, less than 1 %: write 2.9 if 2.9 % is meant.',
        'Max % of Orange oil is 0.3, less than 1 %: write 30 if 30 % is meant.',
        'Orange oil in Tide Pool is 0.5, less than 1 %: write 50 if 50 % is meant.',
      ]),
    );
  });
});

describe('names that look alike (contract §4)', () => {
  it.each(['ＢＯＸ', 'Bo\u00adx', 'box\u200b', ' \ufeffBox '])('%j is Box', (name) => {
    expect(call('ONHAND', name, bookOf(workshop))).toBe(50);
    const twice = withRows(workshop, 'Materials', [name, 'packaging', 'each']);
    expect(refusalOf(call, twice).message).toMatch(/stands in row 8 already. Each may stand once/u);
  });

  it('a cell of nothing that can be seen is blank', () => {
    expect(refusalOf(call, withCell(workshop, 'Lots', 1, 'Material', '\u200b')).message).toBe(
      'Lots, row 1, Material is blank. Fill it in.',
    );
  });

  it('lots of one day go letter by letter: l10 before L2', () => {
    const lots = table(
      'Lot | Material | Received | Quantity | Paid',
      ['L2', 'Box', '2024-01-05', 10, 20],
      ['l10', 'Box', '2024-01-05', 10, 10],
    );
    const used = withRows({ ...workshop, Lots: lots }, 'LedgerLines', [
      'E1',
      '2024-02-01',
      'used',
      'Box',
      -10,
      '',
    ]);
    expect(call('STOCKVALUE', 'Box', bookOf(used))).toBe(20);
  });
});

describe('fees left blank (contract §5)', () => {
  const headers = 'Sale | Sold on | Design | Bars | Price each | Fair | Fees | Tender';
  const feesOf = (...rows: readonly Cell[][]): unknown => {
    const settings = withSetting(
      withSetting(withSetting(workshop, 'Card fee %', 2.5), 'Card fee fixed', 0.1),
      'Sales tax %',
      10,
    );
    const spill = call(
      'FAIR',
      'Harbour Fair',
      bookOf({ ...settings, Sales: table(headers, ...rows) }),
    );
    return column(spill, 'Amount')[2];
  };
  const sale = (id: string, bars: number, fees: Cell, tender: Cell): Cell[] => [
    id,
    '2024-12-06',
    'Plain Bar',
    bars,
    10,
    'Harbour Fair',
    fees,
    tender,
  ];

  it.each([
    // 22.00 paid with the tax on top: 0.55 and 0.10.
    ['card', '', 0.65],
    ['Card', 0.2, 0.2],
    ['cash', '', 0],
    ['other', '', 0],
    ['', '', 0],
  ])('tender %j, fees %j', (tender, fees, expected) => {
    expect(feesOf(sale('S1', 2, fees, tender))).toBe(expected);
  });

  it('come back with the sale that is taken back', () => {
    expect(feesOf(sale('S1', 2, '', 'card'), sale('S1.R', -2, '', 'card'))).toBe(0);
  });

  it('are the same without the column', () => {
    const old = withRows(workshop, 'Sales', [
      'S1',
      '2024-12-06',
      'Plain Bar',
      2,
      10,
      'Harbour Fair',
      '',
    ]);
    expect(column(call('FAIR', 'Harbour Fair', bookOf(old)), 'Amount')[2]).toBe(0);
  });
});

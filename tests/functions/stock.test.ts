import { describe, expect, it } from 'vitest';
import { errorOf, loadFunctions } from '../support/worksheet-functions.ts';
import { movedWorkshop } from '../support/moved-workshop.ts';
import {
  ranges,
  type Tables,
  table,
  withCell,
  withRows,
  withSetting,
  workshop,
} from '../support/small-book.ts';

const call = await loadFunctions();
const bookOf = (tables: Tables): unknown => call('BOOK', ...ranges(tables));

describe('ONHAND', () => {
  it.each([
    ['Clear base', '', 4500],
    ['Clear base', '2024-02-29', 5000],
    ['Clear base', '2024-02-04', 2000],
    ['Clear base', '2024-01-04', 0],
    ['  clear   BASE ', '', 4500],
    ['Slate leftover', '', 12.5],
    ['Slate leftover', '2024-02-29', 0],
    ['Teal × Tiles', '', 18],
    ['Foam × Tiles', '', 0],
    ['Tide Pool', '', 4],
    ['Tide Pool', '2024-03-07', 6],
    ['Tide Pool', 45_359, 4],
    ['Box', '', 53],
    ['Orange oil', '', 180],
  ])('of %j as of %j is %d', (item, asOf, quantity) => {
    expect(call('ONHAND', item, bookOf(movedWorkshop), asOf)).toBe(quantity);
  });

  it('counts a whole day, whatever the time of the move', () => {
    const timed = bookOf(withCell(movedWorkshop, 'LedgerLines', 6, 'When', '2024-03-08 17:45'));
    expect(call('ONHAND', 'Tide Pool', timed, '2024-03-08')).toBe(4);
    expect(call('ONHAND', 'Tide Pool', timed, '2024-03-08T09:00')).toBe(4);
    expect(call('ONHAND', 'Tide Pool', timed, '2024-03-07')).toBe(6);
  });

  it('adds decimals as they stand', () => {
    const tenths = Array.from({ length: 30 }, (_, at) => [
      `D${at}`,
      '2024-04-01',
      'counted',
      'Box',
      0.1,
      '',
      '',
      '',
      '',
      '',
    ]);
    expect(call('ONHAND', 'Box', bookOf(withRows(workshop, 'LedgerLines', ...tenths)))).toBe(53);
  });

  it.each([
    ['Claer base', /"Claer base" is not a stock item.*Did you mean "Clear base"\?/],
    ['Slaet leftover', /Did you mean "Slate leftover"\?/],
    ['Claer base leftover', /Did you mean "Clear base leftover"\?/],
    // Its sign stands on no keyboard.
    ['Teal x Tiles', /Did you mean "Teal × Tiles"\?/],
    ['Teal * Tiles', /Did you mean "Teal × Tiles"\?/],
    ['teal×tiles', /Did you mean "Teal × Tiles"\?/],
    ['Tael × Tiles', /Did you mean "Teal × Tiles"\?/],
    ['Teal', /Did you mean "Teal leftover"\?/],
    ['', /item is blank/],
  ])('refuses %j', (item, sentence) => {
    const { code, message } = errorOf(() => call('ONHAND', item, bookOf(movedWorkshop)));
    expect(code).toBe('#VALUE!');
    expect(message).toMatch(sentence);
  });

  it.each(['yesterday', 12, '2024-02-30', '0099-01-01', true, -1])(
    'refuses %j as a date',
    (asOf) => {
      const { code, message } = errorOf(() => call('ONHAND', 'Box', bookOf(movedWorkshop), asOf));
      expect(code).toBe('#VALUE!');
      expect(message).toMatch(/as of is ".*", which is not a date. Type it like 2026-11-25/);
    },
  );
});

describe('STOCKVALUE', () => {
  it.each([
    // C1 2000 g for 16 and C2 3000 g for 27, of which 500 g at 0.009 went out.
    ['FIFO', 'Clear base', 43 - 4.5],
    // The pool: 43 for 5000 g.
    ['Average', 'Clear base', (43 * 4500) / 5000],
    ['FIFO', 'Slate leftover', 0.25],
    ['Average', 'Teal × Tiles', 0.36],
    ['FIFO', 'Tide Pool', 6],
    // Counted in without a value: at the cost of what lies there.
    ['FIFO', 'Box', 53 * 0.4],
    ['Average', 'Foam leftover', 0],
  ])('under %s of %s', (valuation, item, value) => {
    const book = bookOf(withSetting(movedWorkshop, 'Valuation', valuation));
    expect(call('STOCKVALUE', item, book)).toBeCloseTo(value, 12);
  });

  it('takes soap for a batch at the average before what the batch leaves over', () => {
    const tables = withRows(
      withSetting(workshop, 'Valuation', 'Average'),
      'LedgerLines',
      // Each batch uses up what there is, and leaves a little; bars of the day are sold after they are made.
      ['E1', '2024-03-01', 'left over', 'Teal leftover', 30, '', 0.6, 'B1'],
      ['E2', '2024-03-02', 'left over', 'Teal leftover', 10, '', 0.4, 'B2'],
      ['E3', '2024-03-02', 'used', 'Teal leftover', -30, '', -0.6, 'B2'],
      ['E4', '2024-03-02', 'used', 'Teal leftover', -10, '', -0.4, 'B3'],
      ['E5', '2024-03-02', 'left over', 'Teal leftover', 5, '', 0.3, 'B3'],
      ['E6', '2024-03-02', 'made', 'Tide Pool', 4, '', 8, 'B3'],
      ['E7', '2024-03-02', 'sold', 'Tide Pool', -3, '', -6, ''],
    );
    expect(call('STOCKVALUE', 'Teal leftover', bookOf(tables))).toBeCloseTo(0.3, 12);
    expect(call('UNITCOST', 'Teal leftover', bookOf(tables), '2024-03-01')).toBeCloseTo(0.02, 12);
    expect(call('STOCKVALUE', 'Tide Pool', bookOf(tables))).toBeCloseTo(2, 12);
  });

  it('answers #N/A with what to do where stock came in without a value', () => {
    const unvalued = withRows(workshop, 'LedgerLines', [
      'E1',
      '2024-03-01',
      'made',
      'Tide Pool',
      6,
      '',
      '',
      '',
      '',
      '',
    ]);
    const { code, message } = errorOf(() => call('STOCKVALUE', 'Tide Pool', bookOf(unvalued)));
    expect(code).toBe('#N/A');
    expect(message).toMatch(/Entry E1 in LedgerLines put Tide Pool in stock without a Value/);
  });

  it.each(['FIFO', 'Average'])(
    'is never negative once what was taken too early has come (%s)',
    (valuation) => {
      // 10 taken before any was there, guessed at a dear price; then 20 come for 1 each: 10 at 1 are left.
      const tables: Tables = {
        Settings: table('Setting | Value', ['Valuation', valuation]),
        Materials: table('Material | Kind | Unit | Pack size | Pack price', [
          'Base',
          'base',
          'g',
          1,
          100,
        ]),
        Lots: table(
          'Lot | Material | Received | Quantity | Paid',
          ['L0', 'Base', '2024-01-01', 1, 100],
          ['L1', 'Base', '2024-01-10', 20, 20],
        ),
        LedgerLines: table('Entry | When | Reason | Material | Quantity', [
          'E1',
          '2024-01-05',
          'used',
          'Base',
          -11,
        ]),
      };
      expect(call('STOCKVALUE', 'Base', bookOf(tables))).toBe(10);
    },
  );
});

describe('UNITCOST', () => {
  it.each([
    ['value over what is on hand', movedWorkshop, 'Clear base', '', (43 - 4.5) / 4500],
    ['bars', movedWorkshop, 'Tide Pool', '', 1.5],
    ['the newest lot where none is left', emptied(), 'Clear base', '', 0.009],
    [
      'the pack price where none was ever bought',
      withRows(workshop, 'Materials', [
        'Ribbon',
        'packaging',
        'each',
        '',
        '',
        8,
        2,
        '',
        '',
        '',
        '',
        '',
      ]),
      'Ribbon',
      '',
      0.25,
    ],
    ['the pack price before the first lot', workshop, 'Blue mica', '2024-01-01', 0.2],
  ])('is %s', (_, tables, item, asOf, cost) => {
    expect(call('UNITCOST', item, bookOf(tables), asOf)).toBeCloseTo(cost, 14);
  });

  function emptied(): Tables {
    return withRows(workshop, 'LedgerLines', [
      'E1',
      '2024-03-01',
      'wasted',
      'Clear base',
      -5000,
      '',
      '',
      '',
      '',
      '',
    ]);
  }

  it('answers #N/A with what to do where there is no price at all', () => {
    const tables = withRows(workshop, 'Materials', [
      'Ribbon',
      'packaging',
      'each',
      '',
      '',
      '',
      '',
      '',
      '',
      '',
      '',
      '',
    ]);
    const { code, message } = errorOf(() => call('UNITCOST', 'Ribbon', bookOf(tables)));
    expect(code).toBe('#N/A');
    expect(message).toMatch(/enter a lot, or its Pack size and Pack price/);
  });
});

import { describe, expect, it } from 'vitest';
import { airPassengers } from '../domain/forecast/series.ts';
import { demoTables } from '../../src/starter/demo/demo-tables.ts';
import { demoDay } from '../../src/starter/demo/season.ts';
import { column, errorOf, loadFunctions } from '../support/worksheet-functions.ts';
import {
  ranges,
  type Tables,
  withCell,
  withRows,
  withSetting,
  workshop,
} from '../support/small-book.ts';

const call = await loadFunctions();
const bookOf = (tables: Tables): unknown => call('BOOK', ...ranges(tables));
const asColumn = (values: readonly unknown[]): unknown[][] => values.map((value) => [value]);

describe('FORECAST', () => {
  it('spills one number for each period, without a header', () => {
    expect(call('FORECAST', asColumn([5, 5, 5, 5, 5, 5]), 3)).toEqual([[5], [5], [5]]);
  });

  it('takes a row as well as a column, and counts blanks between figures as 0', () => {
    const months = [4, 0, 6, 5, 0, 3, 7, 0, 4, 6];
    const blanks = months.map((value) => (value === 0 ? '' : value));
    const wanted = call('FORECAST', asColumn(months), 4);
    expect(call('FORECAST', [months], 4)).toEqual(wanted);
    expect(call('FORECAST', asColumn(blanks), 4)).toEqual(wanted);
    expect(call('FORECAST', asColumn(months), 4, 12)).toEqual(wanted);
  });

  it('air passengers: a year ahead within half a percent of R’s HoltWinters', () => {
    // REFERENCES W2.
    const published = [447.056, 419.712, 464.867, 496.084, 507.533, 575.451, 666.592, 657.914];
    const found = (call('FORECAST', asColumn(airPassengers), 8) as number[][]).flat();
    published.forEach((value, index) =>
      expect(Math.abs((found[index] ?? 0) / value - 1)).toBeLessThan(0.0055),
    );
  });

  it.each([
    ['nothing to go by', [asColumn(['']), 3], '#N/A', /history is blank/],
    ['one value', [asColumn([4]), 3], '#N/A', /one value/],
    ['text', [asColumn(['Bars', 4, 5]), 3], '#VALUE!', /Value 1 of history is "Bars"/],
    ['below nothing', [asColumn([4, -5]), 3], '#VALUE!', /Value 2 of history is -5/],
    ['an open end', [asColumn([4, 5, '']), 3], '#VALUE!', /ends with a blank cell/],
    [
      'a block',
      [
        [
          [1, 2],
          [3, 4],
        ],
        3,
      ],
      '#VALUE!',
      /one column or one row/,
    ],
    ['no periods', [asColumn([4, 5]), ''], '#VALUE!', /periods is blank or 0/],
    ['half a period', [asColumn([4, 5]), 1.5], '#VALUE!', /periods is 1.5/],
    ['less than no season', [asColumn([4, 5]), 3, -1], '#VALUE!', /season is -1/],
    ['a season of text', [asColumn([4, 5]), 3, 'year'], '#VALUE!', /season is "year"/],
  ])('%s: a sentence', (_, given, code, sentence) => {
    const error = errorOf(() => call('FORECAST', ...given));
    expect(error.code).toBe(code);
    expect(error.message).toMatch(sentence);
  });
});

describe('FORECASTFIT', () => {
  it('tells the method, its weights and errors, and the span of each period', () => {
    const fit = call('FORECASTFIT', asColumn(airPassengers), 2);
    expect(column(fit, 'Line')).toEqual([
      'Method',
      'In words',
      'alpha',
      'beta',
      'gamma',
      'MAE',
      'RMSE',
      'MASE',
      'Period 1',
      'Period 2',
    ]);
    expect(column(fit, 'Value')[0]).toBe('Holt-Winters, multiplicative');
    expect(asColumn(column(fit, 'Value').slice(8))).toEqual(
      call('FORECAST', asColumn(airPassengers), 2),
    );
    const [low, value, high] = ['Low', 'Value', 'High'].map(
      (name) => column(fit, name)[8] as number,
    );
    expect(low).toBeLessThan(value ?? 0);
    expect(high).toBeGreaterThan(value ?? 0);
  });
});

/** Twelve plain bars of 50 g of white base by 5 December 2024, from 2000 g on hand. */
const plain = withCell(workshop, 'Plan', 1, 'Design', 'Plain Bar');

describe('SUPPLIES', () => {
  it('spills what to buy, with what need not be bought after it', () => {
    const big = withCell(plain, 'Plan', 1, 'Bars', 141);
    // 141 × 50 g = 7050 g, less 2000; packs of 5000 at 45; 6 days and 3 of buffer before 5 December.
    expect(call('SUPPLIES', bookOf(big), '2024-11-01')).toEqual([
      ['Material', 'Gross', 'On hand', 'Net', 'Packs', 'Order by', 'Cost'],
      ['White base', 7050, 2000, 5050, 2, '2024-11-26', 90],
    ]);
    expect(call('SUPPLIES', bookOf(plain), '2024-11-01')).toEqual([
      ['Material', 'Gross', 'On hand', 'Net', 'Packs', 'Order by', 'Cost'],
      ['White base', 600, 2000, 0, 0, '', 0],
    ]);
  });

  it('explodes a design as MATERIALS does', () => {
    const gross = (spill: unknown, name: string): unknown =>
      (spill as unknown[][]).find(([material]) => material === name)?.[1];
    const book = bookOf(workshop);
    const planned = call('SUPPLIES', book, '2024-11-01');
    const batch = call('MATERIALS', 'Tide Pool', 12, book) as unknown[][];
    expect(planned).toHaveLength(batch.length);
    for (const [name] of batch.slice(1))
      expect(gross(planned, String(name))).toBe(gross(batch, String(name)));
  });

  it('counts what MATERIALS says of all that CALENDAR pours on each day', () => {
    const demo = call('BOOK', ...demoTables().map(({ headers, rows }) => [headers, ...rows]));
    const days = new Map<unknown, unknown[][]>();
    for (const [day, task, ...batch] of call('CALENDAR', demo, demoDay) as unknown[][])
      if (task === 'Pour') days.set(day, [...(days.get(day) ?? []), batch]);
    const taken = new Map<unknown, number>();
    for (const pours of days.values()) {
      const [designs, bars] = [0, 1].map((at) => asColumn(pours.map((batch) => batch[at])));
      const [, ...needs] = call('MATERIALS', designs, bars, demo) as [unknown, number][];
      for (const [name, amount] of needs) taken.set(name, (taken.get(name) ?? 0) + amount);
    }
    const [, ...planned] = call('SUPPLIES', demo, demoDay) as [unknown, number][];
    expect([...taken.values()].filter((amount) => amount > 0)).toHaveLength(planned.length);
    for (const [name, gross] of planned)
      expect(taken.get(name), String(name)).toBeCloseTo(gross, 6);
    expect(Math.max(...[...days.values()].map((pours) => pours.length))).toBeGreaterThan(1);
  });

  it('takes Buffer days of Settings', () => {
    const big = withCell(plain, 'Plan', 1, 'Bars', 141);
    expect(
      column(
        call('SUPPLIES', bookOf(withSetting(big, 'Buffer days', 10)), '2024-11-01'),
        'Order by',
      ),
    ).toEqual(['2024-11-19']);
  });

  it.each([
    [
      'no plan',
      { ...workshop, Plan: workshop['Plan']?.slice(0, 1) ?? [] },
      '2024-11-01',
      '#N/A',
      /Plan has no lines/,
    ],
    ['a plan that is over', workshop, '2024-12-06', '#N/A', /No line of Plan/],
    ['a date that is none', workshop, 'soon', '#VALUE!', /from is "soon"/],
  ])('%s: a sentence', (_, tables, from, code, sentence) => {
    const error = errorOf(() => call('SUPPLIES', bookOf(tables), from));
    expect(error.code).toBe(code);
    expect(error.message).toMatch(sentence);
  });
});

describe('SUPPLIES with leftovers', () => {
  it('takes 3000 g of leftover soap first when asked, and only then', () => {
    const big = withCell(plain, 'Plan', 1, 'Bars', 141);
    const left = withRows(big, 'LedgerLines', [
      'M9',
      '2024-10-20',
      'left over',
      'Foam leftover',
      3000,
      '',
      '',
      '',
      '',
      '',
    ]);
    const [asIs, no, yes] = ['', false, true].map((use) =>
      call('SUPPLIES', bookOf(left), '2024-11-01', use),
    );
    // 7050 g in all, as above; melted are 7050 − 3000.
    expect(column(asIs, 'Gross')).toEqual([7050]);
    expect(no).toEqual(asIs);
    expect(column(yes, 'Gross')).toEqual([4050]);
    expect(column(yes, 'Packs')).toEqual([1]);
    const cash = (use: boolean) =>
      column(call('CASHBYWEEK', bookOf(left), '2024-11-25', use), 'Money');
    expect([cash(false), cash(true)]).toEqual([[90], [45]]);
  });

  it('refuses what is neither TRUE nor FALSE', () => {
    const error = errorOf(() => call('SUPPLIES', bookOf(plain), '2024-11-01', 'perhaps'));
    expect([error.code, error.message]).toEqual([
      '#VALUE!',
      'use leftovers is "perhaps". Give TRUE or FALSE.',
    ]);
  });
});

describe('CASHBYWEEK', () => {
  it('has a row for each week to the last order, with what is late and the sum so far', () => {
    const big = withCell(plain, 'Plan', 1, 'Bars', 141);
    // 90 by Tuesday, 26 November 2024; asked from Monday the 18th, and again a day too late.
    expect(call('CASHBYWEEK', bookOf(big), '2024-11-18')).toEqual([
      ['Week from Monday', 'Money', 'Of it late', 'In all'],
      ['2024-11-18', 0, 0, 0],
      ['2024-11-25', 90, 0, 90],
    ]);
    expect(call('CASHBYWEEK', bookOf(big), '2024-11-27')).toEqual([
      ['Week from Monday', 'Money', 'Of it late', 'In all'],
      ['2024-11-25', 90, 90, 90],
    ]);
  });
});

describe('PLANNOTES', () => {
  it('spills a line for each, or its headers alone', () => {
    const tables = withRows(workshop, 'Plan', ['P0', 'Plain Bar', 3, '2024-10-31', '']);
    const found = call('PLANNOTES', bookOf(tables), '2024-11-01') as unknown[][];
    expect(found[0]).toEqual(['About', 'Note']);
    expect(found[1]).toEqual([
      'P0',
      'Plan line P0 was to be ready by 2024-10-31, before 2024-11-01. Give it a later day or take it out of Plan.',
    ]);
    expect(
      found.slice(2).every(([about, note]) => about !== '' && String(note).endsWith('.')),
    ).toBe(true);
    const limited = withSetting(plain, 'Minutes per day', 300);
    expect(call('PLANNOTES', bookOf(limited), '2024-11-01')).toEqual([['About', 'Note']]);
  });
});

describe('CALENDAR', () => {
  it('goes back from Ready by over the hands-off hours', () => {
    // 20 minutes of setup and 10 a bar; 24 hours to dry.
    expect(call('CALENDAR', bookOf(workshop), '2024-11-01')).toEqual([
      ['Date', 'Task', 'Design', 'Bars', 'Minutes'],
      ['2024-12-04', 'Pour', 'Tide Pool', 12, 140],
    ]);
  });

  it('keeps to the minutes of a day and rest days', () => {
    const tables = withSetting(withSetting(workshop, 'Minutes per day', 100), 'Rest days', 'Wed');
    expect(call('CALENDAR', bookOf(tables), '2024-11-01')).toEqual([
      ['Date', 'Task', 'Design', 'Bars', 'Minutes'],
      ['2024-12-02', 'Pour', 'Tide Pool', 6, 80],
      ['2024-12-03', 'Pour', 'Tide Pool', 6, 80],
    ]);
  });

  it('says first what does not fit or is over, without a date', () => {
    const tables = withRows(workshop, 'Plan', ['P0', 'Plain Bar', 3, '2024-10-31', '']);
    const spill = call('CALENDAR', bookOf(tables), '2024-11-01') as unknown[][];
    expect(spill[1]).toEqual([
      '',
      'Plan line P0 was to be ready by 2024-10-31, before 2024-11-01. Give it a later day or take it out of Plan.',
      'Plain Bar',
      3,
      '',
    ]);
    expect(spill[2]?.[0]).toBe('2024-12-04');
  });
});

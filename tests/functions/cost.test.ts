import { describe, expect, it } from 'vitest';
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
const DAY = '2024-03-01';

/** What a batch of 2 Tide Pools costs, by hand; spares carry their soap out of the bars. */
const batchOfTwo = {
  // Slate tiles 25 g and half of Mist's and Teal's 25 g each are in the bars; 43 for 5000 g of base.
  'Clear base': (25 * 0.97 + 7.5 * 0.97 + 12.5 * 0.9904 + 115) * (43 / 5000),
  'White base': (5 + 10) * 0.009,
  'Blue mica': (25 + 7.5) * 0.03 * 0.2,
  'Green drops': 0.1 * 0.15,
  'Orange oil': ((0.02 * 57.5) / 0.85) * 2 * 0.15,
  Glycerin: 1 * 0.02,
  Alcohol: 2 * 0.01,
  Box: 2 * 0.4,
  Labour: (20 / 60) * 18,
  Setup: (20 / 60) * 18,
  'Tiles wear': 3 * 0.12,
  'Lighthouse wear': 0.1,
  'Six bars wear': 0.12,
  Overhead: 0.5,
  'Lost bars': 0,
};
const total = Object.values(batchOfTwo).reduce((sum, cost) => sum + cost, 0);

describe('COSTPERBAR', () => {
  it('is the full cost of a batch over its good bars', () => {
    expect(call('COSTPERBAR', 'Tide Pool', bookOf(workshop), 2, DAY)).toBeCloseTo(total / 2, 9);
  });

  it('takes a dozen bars and today where these are blank', () => {
    const book = bookOf(workshop);
    expect(call('COSTPERBAR', 'Tide Pool', book)).toBe(call('COSTPERBAR', 'Tide Pool', book, 12));
    expect(call('COSTPERBAR', 'Tide Pool', book, '', '')).toBe(
      call('COSTPERBAR', 'Tide Pool', book, 12, DAY),
    );
  });

  it('falls as a batch shares its setup', () => {
    const book = bookOf(workshop);
    const at = (bars: number): number => call('COSTPERBAR', 'Tide Pool', book, bars, DAY) as number;
    expect(at(1)).toBeGreaterThan(at(2));
    expect(at(2)).toBeGreaterThan(at(24));
  });

  it('doubles what a bar costs where half of those started are lost', () => {
    const plain = bookOf(withCell(workshop, 'Designs', 3, 'Yield %', 100));
    const lossy = bookOf(workshop);
    // Four good bars of eight started cost as much as eight good ones.
    const four = call('COSTPERBAR', 'Half Yield', lossy, 4, DAY) as number;
    const eight = call('COSTPERBAR', 'Half Yield', plain, 8, DAY) as number;
    expect(four).toBeCloseTo(2 * eight, 9);
    const lines = call('COSTLINES', 'Half Yield', lossy, 4, DAY) as unknown[][];
    expect(lines.at(-1)?.[0]).toBe('Lost bars');
    expect(lines.at(-1)?.[1]).toBeCloseTo(eight, 9);
  });

  it('takes the costs of the day asked for', () => {
    const dear = withRows(workshop, 'Lots', ['B2', 'Box', '2024-02-20', 50, 60, '', '', '']);
    const before = call('COSTPERBAR', 'Tide Pool', bookOf(dear), 2, '2024-02-10') as number;
    const after = call('COSTPERBAR', 'Tide Pool', bookOf(dear), 2, '2024-02-20') as number;
    expect(after - before).toBeCloseTo(80 / 100 - 0.4, 9);
  });

  it('answers #N/A with what to do where a price is missing', () => {
    const unpriced = {
      ...workshop,
      Lots: (workshop['Lots'] ?? []).filter(([, name]) => name !== 'Box'),
    };
    const book = bookOf(withCell(unpriced, 'Materials', 8, 'Pack price', ''));
    const { code, message } = errorOf(() => call('COSTPERBAR', 'Tide Pool', book, 2, DAY));
    expect(code).toBe('#N/A');
    expect(message).toMatch(/Box has no cost yet/);
  });

  it('answers #N/A where a mold’s life is missing', () => {
    const book = bookOf(withCell(workshop, 'Molds', 1, 'Life fills', ''));
    const { code, message } = errorOf(() => call('COSTPERBAR', 'Tide Pool', book, 2, DAY));
    expect(code).toBe('#N/A');
    expect(message).toMatch(/Fill in Life fills for Tiles in Molds/);
  });

  it.each([
    [['Tide Pool', -1], /Bars is -1/],
    [['Tide Pool', 2.5], /Bars is 2.5/],
    [['Tide Poll', 2], /Did you mean "Tide Pool"\?/],
    [['', 2], /design is blank/],
    [['Tide Pool', 'x'], /bars is "x"/],
  ])('refuses %j', ([design, bars], sentence) => {
    const { code, message } = errorOf(() => call('COSTPERBAR', design, bookOf(workshop), bars));
    expect(code).toBe('#VALUE!');
    expect(message).toMatch(sentence);
  });
});

describe('COSTLINES', () => {
  const lines = call('COSTLINES', 'Tide Pool', bookOf(workshop), 2, DAY) as unknown[][];

  it('has a line for each material, labour, setup, each mold, overhead and lost bars', () => {
    expect(lines[0]).toEqual(['Line', 'Per bar', 'Share %']);
    const found = Object.fromEntries(lines.slice(1).map(([line, perBar]) => [line, perBar]));
    expect(Object.keys(found).sort()).toEqual(Object.keys(batchOfTwo).sort());
    for (const [line, cost] of Object.entries(batchOfTwo))
      expect(found[line], line).toBeCloseTo(cost / 2, 8);
  });

  it('has shares that come to 100', () => {
    const shares = column(lines, 'Share %') as number[];
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(100, 6);
  });

  it('has shares of 0 where a bar costs nothing', () => {
    const free: Tables = {
      ...withSetting(withSetting(workshop, 'Labour rate per hour', 0), 'Overhead per bar', 0),
      Lots: (workshop['Lots'] ?? []).map((row, at) =>
        at === 0 ? row : [...row.slice(0, 4), 0, 0, '', ''],
      ),
      Molds: (workshop['Molds'] ?? []).map((row, at) =>
        at === 0 ? row : [...row.slice(0, 6), '', '', ''],
      ),
    };
    const spill = call('COSTLINES', 'Tide Pool', bookOf(free), 2, DAY);
    expect(column(spill, 'Share %').every((share) => share === 0)).toBe(true);
    expect(call('COSTPERBAR', 'Tide Pool', bookOf(free), 2, DAY)).toBe(0);
  });
});

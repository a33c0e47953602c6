import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { daysWithout, stockOuts, weeklyLows } from '../../../src/domain/reorder/stock-year.ts';

describe('a simulated year', () => {
  it('by weeks is the lowest of each, the last day with the last week', () => {
    const year = Array.from({ length: 365 }, (_, day) => 1000 - day);
    const lows = weeklyLows(year);
    expect(lows).toHaveLength(52);
    // Days 0 to 6, 7 to 13, … and 357 to 364.
    expect(lows.slice(0, 2)).toEqual([994, 987]);
    expect(lows.at(-1)).toBe(1000 - 364);
  });

  it('tells each time that stock ran out', () => {
    expect(stockOuts([3, 0, -1, -2, 5, -1])).toEqual([
      { from: 2, to: 3 },
      { from: 5, to: 5 },
    ]);
    expect(stockOuts([1, 0])).toEqual([]);
  });

  it('has as many days without stock as its times without stock have days', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -3, max: 3 })), (year) => {
        const days = stockOuts(year).reduce((sum, { from, to }) => sum + to - from + 1, 0);
        expect(days).toBe(daysWithout(year));
      }),
    );
  });
});

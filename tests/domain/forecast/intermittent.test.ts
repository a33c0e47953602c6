import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { forecast, forecastReport } from '../../../src/domain/forecast/forecast.ts';
import { sure } from '../../support/ledger-of.ts';

describe('demand with many empty months', () => {
  // A month a season ago without a sale used to make the same month's forecast nothing.
  it.each([
    ['one sale after a year of none', [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 3, 0]],
    ['sales of last year alone', [4, 0, 0, 2, 0, 0, 0, 0, 0, 0, 3, 0, 0, 0, 0]],
    ['two years', [0, 2, 0, 0, 0, 1, 0, 0, 0, 0, 5, 0, 0, 2, 0, 0, 0, 0, 0, 0, 0, 0, 4, 0]],
  ])('%s: something is expected of every month', (_, history) => {
    for (const value of sure(forecast(history, 12))) expect(value).toBeGreaterThan(0);
    expect(sure(forecastReport(history, 3)).inWords).toBe(
      sure(forecastReport(history, 3)).method === 'average'
        ? 'Each period is taken for the average of all periods so far. Many periods are empty; of the ways tried this one foresaw the newest best from those before.'
        : 'Each period is taken for how often anything is sold, times how many are sold then. Many periods are empty; of the ways tried this one foresaw the newest best from those before.',
    );
  });

  it('never comes to flat zeros from less than three seasons', () => {
    const month = fc.oneof(
      { weight: 3, arbitrary: fc.constant(0) },
      { weight: 1, arbitrary: fc.integer({ min: 1, max: 9 }) },
    );
    fc.assert(
      fc.property(fc.array(month, { minLength: 4, maxLength: 35 }), (history) => {
        fc.pre(
          history.some((sold) => sold > 0) &&
            history.filter((sold) => sold > 0).length * 1.32 <= history.length,
        );
        expect(Math.min(...sure(forecast(history, 6)))).toBeGreaterThan(0);
      }),
      { numRuns: 60 },
    );
  });

  it('that comes back in the same months for three years is foreseen in them', () => {
    const year = [0, 0, 0, 0, 0, 0, 0, 0, 0, 4, 9, 12];
    const next = sure(forecast([...year, ...year, ...year, ...year], 12));
    expect(next.slice(9).every((value, at) => Math.abs(value - (year[9 + at] ?? 0)) < 1)).toBe(
      true,
    );
  });
});

describe('the method in plain words', () => {
  it.each([
    [
      [5, 5],
      'Each period is taken for the average of all periods so far. 2 figures tell nothing but their average.',
    ],
    [
      [10, 12, 14, 16, 18, 20, 22, 24],
      'Each period is taken for the average of what was sold, the newest weighing most, and its trend. Of the ways tried this one came nearest to the history, the fewer figures it needs the better.',
    ],
  ])('%j', (history, words) => {
    expect(sure(forecastReport(history, 1)).inWords).toBe(words);
  });
});

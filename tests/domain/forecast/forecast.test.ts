import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { forecast, forecastReport } from '../../../src/domain/forecast/forecast.ts';
import type { Result } from '../../../src/domain/kernel/result.ts';
import { airPassengers, beer, co2 } from './series.ts';

function valueOf<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.failure.sentence);
  return result.value;
}
const report = (history: readonly number[], periods = 12, season = 12) =>
  valueOf(forecastReport(history, periods, season));

/** A year of months that averages 50. */
const month: readonly number[] = [30, 20, 40, 50, 60, 70, 80, 70, 60, 50, 40, 30];

/** Values by time and a season's figure that sums to nothing over twelve. */
function line(length: number, value: (t: number, season: number) => number): number[] {
  const figures = [3, 1, -2, 4, -1, -3, 2, -4, 0, 1, -2, 1];
  return Array.from({ length }, (_, t) => value(t, figures[t % 12] ?? 0));
}

describe('the method chosen', () => {
  it('air passengers: a season that multiplies', () => {
    expect(report(airPassengers).method).toBe('Holt-Winters, multiplicative');
  });

  it('air passengers: the last year foreseen from the years before within 5 %', () => {
    // The 12 values of 1960 are known: ../series.ts.
    const found = valueOf(forecast(airPassengers.slice(0, 132), 12));
    const off = found.map((value, index) =>
      Math.abs(value / (airPassengers[132 + index] ?? 0) - 1),
    );
    expect(off.reduce((sum, error) => sum + error, 0) / 12).toBeLessThan(0.05);
  });

  it('co2: a trend and a season, better than last year’s figure', () => {
    const found = report(co2);
    expect(found.method).toMatch(/^Holt-Winters/);
    expect(found.mase).toBeLessThan(0.5);
  });

  it('beer: ten quarters ahead, better than the book’s best plain method', () => {
    const found = valueOf(forecast(beer.train, 10, 4));
    const errors = found.map((value, index) => Math.abs(value - (beer.test[index] ?? 0)));
    // Seasonal naive has MAE 13.4: REFERENCES A3.
    expect(errors.reduce((sum, error) => sum + error, 0) / 10).toBeLessThan(13.4);
  });

  it.each([
    ['one figure again and again', [7, 7, 7, 7, 7, 7], 12, [7, 7, 7]],
    ['a straight line', [10, 12, 14, 16, 18, 20], 12, [22, 24, 26]],
    ['two years alike', [...month, ...month], 12, month.slice(0, 3)],
    [
      'a trend with an additive season',
      line(24, (t, s) => 50 + t + 10 * s),
      12,
      line(3, (t, s) => 74 + t + 10 * s),
    ],
    ['nothing ever sold', [0, 0, 0, 0, 0], 12, [0, 0, 0]],
    ['two values: their average', [10, 20], 12, [15, 15, 15]],
  ] as const)('%s goes on', (_, history, season, next) => {
    const found = valueOf(forecast(history, 3, season));
    next.forEach((value, index) => expect(found[index]).toBeCloseTo(value, 3));
  });

  it('noise without a season is not taken for one', () => {
    // Two years of throws of a die.
    const thrown = [4, 2, 6, 3, 1, 5, 2, 2, 6, 4, 3, 5, 1, 6, 3, 4, 4, 2, 5, 1, 3, 6, 2, 4];
    expect(report(thrown).method).not.toMatch(/season|Winters/);
  });

  it('lumpy use goes to what foresees it best, and its level is the average', () => {
    const lumpy = [0, 0, 12, 0, 0, 0, 9, 0, 0, 15, 0, 0, 0, 0, 11, 0, 0, 13, 0, 0, 0, 10, 0, 0];
    const found = report(lumpy, 3, 1);
    expect(found.method).toBe('average');
    expect(found.periods[0]?.value).toBeGreaterThan(2);
    expect(found.periods[0]?.value).toBeLessThan(4);
  });

  it('sales in one month of the year only are a season, not lumps', () => {
    const december = Array.from({ length: 48 }, (_, t) => (t % 12 === 11 ? 100 + t : 0));
    const found = valueOf(forecast(december, 12));
    expect(found[11]).toBeGreaterThan(100);
    found.slice(0, 11).forEach((value) => expect(value).toBeLessThan(10));
  });
});

describe('the companion report', () => {
  it('states method, weights, errors and intervals', () => {
    const found = report(airPassengers, 3);
    expect(found.parameters.map(({ name }) => name)).toEqual(['alpha', 'beta', 'gamma']);
    expect(found.mae).toBeGreaterThan(0);
    expect(found.rmse).toBeGreaterThanOrEqual(found.mae);
    expect(found.mase).toBeLessThan(1);
    expect(found.tried[0]?.method).toBe(found.method);
    for (const { value, low, high } of found.periods) {
      expect(low).toBeLessThan(value);
      expect(high).toBeGreaterThan(value);
    }
  });

  it('tells the same numbers as the forecast', () => {
    expect(report(co2, 5).periods.map(({ value }) => value)).toEqual(valueOf(forecast(co2, 5)));
  });

  it('holds about as many of the next months as it says', () => {
    // Every year of air passengers from 1953 on, foreseen from the years before, at 80 %.
    let inside = 0;
    let all = 0;
    for (let from = 48; from < 144; from += 12) {
      const { periods } = valueOf(forecastReport(airPassengers.slice(0, from), 12, 12, 80));
      periods.forEach(({ low, high }, index) => {
        const value = airPassengers[from + index] ?? 0;
        all += 1;
        if (low <= value && value <= high) inside += 1;
      });
    }
    expect(inside / all).toBeGreaterThan(0.5);
    expect(inside / all).toBeLessThan(0.95);
  });
});

describe('what can’t be forecast', () => {
  it.each([
    [[], 12, 12, 'not yet', /no values/],
    [[5], 12, 12, 'not yet', /one value/],
    [[5, 6, -1], 12, 12, 'wrong', /Value 3 of history is -1/],
    [[5, 6], 0, 12, 'wrong', /periods is 0/],
    [[5, 6], 1.5, 12, 'wrong', /periods is 1.5/],
    [[5, 6], 601, 12, 'wrong', /1 to 600/],
    [[5, 6], 3, 0, 'wrong', /season is 0/],
    [[5, NaN], 3, 12, 'wrong', /NaN/],
  ] as const)('%j, %d periods, season %d', (history, periods, season, kind, sentence) => {
    const found = forecast(history, periods, season);
    expect(found).toMatchObject({ ok: false, failure: { kind } });
    if (!found.ok) expect(found.failure.sentence).toMatch(sentence);
  });
});

describe('laws', () => {
  const histories = fc.array(fc.integer({ min: 0, max: 500 }), { minLength: 2, maxLength: 40 });

  it('every forecast lies in its own interval', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          histories,
          // Errors that all go one way.
          histories.map((values) => [...values].sort((a, b) => a - b)),
          histories.map((values) => [...values].sort((a, b) => a - b).slice(0, 3)),
        ),
        (history) => {
          for (const { value, low, high } of report(history, 3).periods) {
            expect(low).toBeLessThanOrEqual(value);
            expect(high).toBeGreaterThanOrEqual(value);
          }
        },
      ),
      { numRuns: 40 },
    );
  });

  it('every forecast is a number and not below 0', () => {
    fc.assert(
      fc.property(
        histories,
        fc.integer({ min: 1, max: 24 }),
        fc.constantFrom(1, 4, 12),
        (history, periods, season) => {
          const found = valueOf(forecast(history, periods, season));
          expect(found).toHaveLength(periods);
          for (const value of found) {
            expect(Number.isFinite(value)).toBe(true);
            expect(value).toBeGreaterThanOrEqual(0);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it('a history k times as large has a forecast k times as large', () => {
    fc.assert(
      fc.property(histories, fc.constantFrom(0.001, 0.1, 3, 1000, 1e6), (history, k) => {
        const plain = valueOf(forecast(history, 6));
        const scaled = valueOf(
          forecast(
            history.map((value) => value * k),
            6,
          ),
        );
        plain.forEach((value, index) => {
          const off = Math.abs((scaled[index] ?? 0) - value * k);
          expect(off).toBeLessThanOrEqual(1e-6 * k * (1 + value));
        });
      }),
      { numRuns: 60 },
    );
  });

  it('leaves the history as it was', () => {
    const history = Object.freeze([3, 4, 5, 6, 2, 8, 3, 4]);
    expect(valueOf(forecast(history, 3, 4))).toHaveLength(3);
  });

  it('rests on the newest values of a history of ten thousand days, and says so', () => {
    const days = Array.from({ length: 10_000 }, (_, day) => 20 + ((day * 7919) % 13));
    const newest = days.slice(-480);
    const { method, periods } = report(days, 6);
    expect(method).toContain('from the newest 480 of 10000 values');
    expect(periods).toEqual(report(newest, 6).periods);
    expect(valueOf(forecast(days, 6))).toEqual(valueOf(forecast(newest, 6)));
  });
});

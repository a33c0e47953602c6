import { expect, it } from 'vitest';
import type { Fit } from '../../../src/domain/forecast/fit.ts';
import { intervals, quantile } from '../../../src/domain/forecast/interval.ts';
import { Smoothing } from '../../../src/domain/forecast/smoothing.ts';
import { normalQuantile } from '../../../src/domain/reorder/normal-quantile.ts';

it('simple smoothing with normal errors: as wide as the known formula says', () => {
  // Spread of the error h periods ahead is σ·√(1 + (h − 1)α²): Hyndman and Athanasopoulos,
  // Forecasting: principles and practice, table of forecast variances, model ETS(A,N,N) (from memory).
  const alpha = 0.5;
  const sigma = 3;
  const errors = Array.from({ length: 999 }, (_, i) => sigma * normalQuantile((i + 1) / 1000));
  const stepper = new Smoothing(
    { trend: false, season: 'none' },
    { alpha, beta: 0, gamma: 0, phi: 1 },
    { level: 100, trend: 0, seasonal: [] },
  );
  const fitted: Fit = {
    method: { name: 'test', parameters: [], known: 0, borrowsSlope: false, begin: () => stepper },
    parameters: [],
    errors,
    stepper,
  };
  intervals(fitted, 8, 80).forEach(({ low, high }, index) => {
    const half = normalQuantile(0.9) * sigma * Math.sqrt(1 + index * alpha ** 2);
    expect(Math.abs((high - low) / 2 / half - 1)).toBeLessThan(0.08);
    expect(Math.abs((high + low) / 2 - 100)).toBeLessThan(0.5);
  });
  expect(stepper.predict(1)).toBe(100);
});

it('quantiles lie between the values', () => {
  expect([0, 0.25, 0.5, 1].map((share) => quantile([1, 2, 4], share))).toEqual([1, 1.5, 2, 4]);
});

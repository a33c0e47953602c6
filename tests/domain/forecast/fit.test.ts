import { describe, expect, it } from 'vitest';
import { fit, squares } from '../../../src/domain/forecast/fit.ts';
import type { Method } from '../../../src/domain/forecast/method.ts';
import { methodsFor } from '../../../src/domain/forecast/methods.ts';
import { minimise } from '../../../src/domain/forecast/minimise.ts';
import { Smoothing } from '../../../src/domain/forecast/smoothing.ts';
import { predictAll } from '../../../src/domain/forecast/stepper.ts';
import { rStart } from './r-start.ts';
import { airPassengers, co2, livestock, oil } from './series.ts';

const named = (values: readonly number[], season: number, name: string): Method => {
  const method = methodsFor(values, season).find((found) => found.name === name);
  if (method === undefined) throw new Error(`no method ${name}`);
  return method;
};

describe('parameters by least squared error', () => {
  it('oil: weight and starting level as published', () => {
    // Source: statsmodels test_holtwinters.py, lines 370-398, estimated by R's ets: REFERENCES F3.
    const found = fit(named(oil, 1, 'simple smoothing'), oil);
    expect(found.parameters[0]).toBeCloseTo(0.891998, 3);
    expect(found.parameters[1]).toBeCloseTo(447.47844, 1);
    expect(found.stepper.predict(1)).toBeCloseTo(496.493543, 2);
    // The published parameters leave 7573.42.
    expect(squares(found.errors)).toBeLessThanOrEqual(7573.43);
  });

  it('livestock: a damped trend no worse than the published fit', () => {
    // Source: statsmodels test_holtwinters.py, test_holt_damp_r: mean squared error 195.4398 (REFERENCES H2).
    const found = fit(named(livestock, 1, 'Holt, damped trend'), livestock);
    expect(squares(found.errors) / livestock.length).toBeLessThanOrEqual(195.44);
  });

  // Source: the statistics program R, tests/Examples/stats-Ex.Rout.save, lines 423-477: REFERENCES W1, W2.
  it.each([
    ['additive', co2, [0.51265, 0.0094977, 0.47289], [1e-4, 1e-4, 1e-4], 43.12986],
    ['multiplicative', airPassengers, [0.27559, 0.032693, 0.87073], [1e-4, 1e-4, 1e-4], 16570.78],
  ] as const)(
    'from R’s starting states, %s: R’s weights',
    (season, values, weights, within, sse) => {
      const start = rStart(values, 12, season);
      const method: Method = {
        ...named(values, 12, `Holt-Winters, ${season}`),
        begin: ([alpha = 0, beta = 0, gamma = 0]) =>
          new Smoothing({ trend: true, season }, { alpha, beta, gamma, phi: 1 }, start),
      };
      const found = fit(method, values);
      weights.forEach((weight, index) =>
        expect(Math.abs((found.parameters[index] ?? 0) - weight)).toBeLessThan(within[index] ?? 0),
      );
      expect(squares(found.errors)).toBeLessThan(sse * 1.000001);
    },
  );

  it('air passengers from our own starting states: within half a percent of R’s forecasts', () => {
    const found = fit(named(airPassengers, 12, 'Holt-Winters, multiplicative'), airPassengers);
    // REFERENCES W2: derived from R's printed coefficients.
    const published = [
      447.056, 419.712, 464.867, 496.084, 507.533, 575.451, 666.592, 657.914, 550.309, 492.985,
      420.207, 465.635,
    ];
    predictAll(found.stepper, 12).forEach((value, index) =>
      expect(Math.abs(value / (published[index] ?? 0) - 1)).toBeLessThan(0.0055),
    );
  });
});

describe('minimise', () => {
  it('finds the bottom of a bent valley (Rosenbrock, 1960)', () => {
    const [x = 0, y = 0] = minimise(([a = 0, b = 0]) => 100 * (b - a * a) ** 2 + (1 - a) ** 2, {
      low: [-2, -2],
      high: [2, 2],
      guesses: [[-1.2, 1]],
    });
    expect(x).toBeCloseTo(1, 4);
    expect(y).toBeCloseTo(1, 4);
  });

  it('stays in its box and away from what has no value', () => {
    const at = minimise(([a = 0]) => (a < 0.2 ? NaN : a), {
      low: [0],
      high: [1],
      guesses: [[0.5]],
    });
    expect(at[0]).toBeCloseTo(0.2, 3);
    expect(minimise(([a = 0]) => -a, { low: [0], high: [1], guesses: [[0.5]] })).toEqual([1]);
  });
});

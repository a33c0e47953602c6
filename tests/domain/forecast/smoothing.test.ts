import { describe, expect, it } from 'vitest';
import { squares } from '../../../src/domain/forecast/fit.ts';
import {
  Smoothing,
  type SmoothingForm,
  type SmoothingParameters,
  type SmoothingStates,
} from '../../../src/domain/forecast/smoothing.ts';
import { predictAll, stepErrors } from '../../../src/domain/forecast/stepper.ts';
import { rStart } from './r-start.ts';
import { airPassengers, ausair, austourists, co2, livestock, oil } from './series.ts';

const simple: SmoothingForm = { trend: false, season: 'none' };
const holt: SmoothingForm = { trend: true, season: 'none' };
const winters = (season: 'additive' | 'multiplicative'): SmoothingForm => ({ trend: true, season });

const none: SmoothingParameters = { alpha: 0, beta: 0, gamma: 0, phi: 1 };
const at = (level: number, trend = 0, seasonal: readonly number[] = []): SmoothingStates => ({
  level,
  trend,
  seasonal,
});

/** Runs fixed parameters and states over values; keeps each level and forecast on the way. */
function run(
  form: SmoothingForm,
  parameters: Partial<SmoothingParameters>,
  start: SmoothingStates,
  values: readonly number[],
) {
  const smoothing = new Smoothing(form, { ...none, ...parameters }, start);
  const errors: number[] = [];
  const levels: number[] = [];
  for (const value of values) {
    errors.push(...stepErrors(smoothing, [value]));
    levels.push(smoothing.states().level);
  }
  const fitted = values.map((value, index) => value - (errors[index] ?? 0));
  return { smoothing, errors, levels, fitted, states: smoothing.states() };
}

const close = (found: readonly number[], wanted: readonly number[], digits: number): void => {
  expect(found).toHaveLength(wanted.length);
  wanted.forEach((value, index) => expect(found[index]).toBeCloseTo(value, digits));
};

describe('simple exponential smoothing', () => {
  // Source: statsmodels test_holtwinters.py, lines 370-398 (first-edition oil series of Hyndman and
  // Athanasopoulos, Forecasting: principles and practice): REFERENCES F1, F2.
  it.each([
    [0.2, 484.802468],
    [0.6, 501.837461],
  ])('oil, alpha %f, started from the first value', (alpha, next) => {
    const { smoothing } = run(simple, { alpha }, at(oil[0] ?? 0), oil);
    expect(smoothing.predict(1)).toBeCloseTo(next, 6);
  });

  it('oil, alpha 0.2: every level as published', () => {
    close(
      run(simple, { alpha: 0.2 }, at(oil[0] ?? 0), oil).levels,
      [
        446.6565229, 448.21987962, 449.7084985, 444.49324656, 446.84886283, 445.59670028,
        441.54386424, 450.26498098, 461.4216172, 474.49569042, 482.45033014, 484.80246797,
      ],
      7,
    );
  });

  it('a page-worked example: ten values, alpha 0.3', () => {
    // Source: wongsteve.com/Exponential_Smoothing.htm (its last figure chains rounded ones): REFERENCES F6.
    const values = [99, 88, 50, 58, 62, 60, 55, 62, 71, 65];
    const { smoothing, fitted, errors } = run(simple, { alpha: 0.3 }, at(99), values);
    close(
      fitted.slice(1),
      [99, 95.7, 81.99, 74.793, 70.9551, 67.6686, 63.868, 63.3076, 65.6153],
      4,
    );
    expect(smoothing.predict(1)).toBeCloseTo(65.43072, 5);
    expect(squares(errors.slice(1)) / 9).toBeCloseTo(365.8021, 4);
  });

  // REFERENCES F7, F8: justaaa.com 27952 and 57877. Their forecasts chain figures rounded to two decimals, so
  // the last may be a little over half a hundredth off (19.1248 is printed 19.13).
  it.each([
    [[24, 15, 21, 13, 19, 21, 16], 30.4, 19.32],
    [[23, 13, 21, 13, 19, 21, 17], 29.01, 19.13],
  ])('a homework example of seven weeks, alpha 0.2: %j', (values, mse, next) => {
    const { smoothing, errors } = run(simple, { alpha: 0.2 }, at(values[0] ?? 0), values);
    expect(squares(errors.slice(1)) / 6).toBeCloseTo(mse, 2);
    expect(Math.abs(smoothing.predict(1) - next)).toBeLessThan(0.006);
  });
});

describe('Holt', () => {
  it('air travel, alpha 0.8, beta 0.2: fitted values and forecasts as published', () => {
    // Source: statsmodels test_holtwinters.py, lines 404-462: REFERENCES H1.
    const [first = 0, second = 0] = ausair;
    const { smoothing, fitted } = run(
      holt,
      { alpha: 0.8, beta: 0.2 },
      at(first, second - first),
      ausair,
    );
    close(
      fitted,
      [
        21.8601, 22.0324, 25.4846, 27.5406, 30.2881, 30.2611, 31.5812, 32.5992, 33.2422, 32.2676,
        33.0778, 33.9581, 34.7771, 40.0554, 43.2159,
      ],
      4,
    );
    close(predictAll(smoothing, 5), [43.757, 45.5935, 47.4301, 49.2666, 51.1032], 3);
  });

  it('livestock, damped with phi 0.98: levels, forecasts and error as published', () => {
    // Source: statsmodels test_holtwinters.py, test_holt_damp_r (R's ets, model AAN): REFERENCES H2.
    const { smoothing, levels, errors } = run(
      holt,
      { alpha: 0.97402626, beta: 0.00010006, phi: 0.98 },
      at(252.59039965, 6.90265918),
      livestock,
    );
    expect(levels[0]).toBeCloseTo(263.7992355, 6);
    expect(levels[30]).toBeCloseTo(414.1814573, 5);
    close(
      predictAll(smoothing, 10),
      [
        417.7982, 421.3426, 424.8161, 428.2202, 431.5561, 434.8254, 438.0293, 441.169, 444.246,
        447.2615,
      ],
      3,
    );
    expect(squares(errors) / 31).toBeCloseTo(195.4393, 3);
  });
});

describe('Holt-Winters with R’s starting states', () => {
  // Source: the statistics program R, tests/Examples/stats-Ex.Rout.save, lines 423-477: every
  // printed digit (REFERENCES W1, W2). R prints five digits, so its parameters carry that much rounding.
  it('co2, additive: the printed coefficients', () => {
    const start = rStart(co2, 12, 'additive');
    expect(start.level).toBeCloseTo(315.7657639, 7);
    expect(start.trend).toBeCloseTo(0.0883012821, 9);
    const { states } = run(
      winters('additive'),
      { alpha: 0.51265, beta: 0.0094977, gamma: 0.47289 },
      start,
      co2.slice(12),
    );
    expect(states.level).toBeCloseTo(364.76162, 4);
    expect(states.trend).toBeCloseTo(0.12474, 4);
    close(
      states.seasonal,
      [
        0.22153, 0.95528, 1.59847, 2.8758, 3.28201, 2.4407, 0.89694, -1.37964, -3.41124, -3.25702,
        -1.91349, -0.58442,
      ],
      4,
    );
  });

  it('air passengers, multiplicative: the printed coefficients', () => {
    const start = rStart(airPassengers, 12, 'multiplicative');
    expect(start.level).toBeCloseTo(124.3169192, 7);
    expect(start.trend).toBeCloseTo(1.1456876, 6);
    const { states } = run(
      winters('multiplicative'),
      { alpha: 0.27559, beta: 0.032693, gamma: 0.87073 },
      start,
      airPassengers.slice(12),
    );
    // 469.32322 printed; 469.32296 with parameters of five digits.
    expect(states.level).toBeCloseTo(469.32296, 4);
    expect(states.trend).toBeCloseTo(3.02154, 4);
    close(
      states.seasonal,
      [
        0.94646, 0.88292, 0.97174, 1.03048, 1.04769, 1.18053, 1.35908, 1.33317, 1.10834, 0.98688,
        0.83613, 0.92099,
      ],
      5,
    );
  });

  // Derived independently (REFERENCES W3, W4, W5) with alpha 0.5, beta 0.1, gamma 0.3.
  it.each([
    [
      'co2',
      'additive',
      co2,
      364.86735226,
      47.185089,
      [
        365.14138, 366.015441, 366.878226, 368.276807, 368.840264, 368.148721, 366.671976,
        364.602446, 362.807433, 363.072615, 364.569131, 366.021764,
      ],
    ],
    [
      'air passengers',
      'multiplicative',
      airPassengers,
      496.56841407,
      34935.049079,
      [
        457.506792, 447.808677, 522.794257, 524.174053, 524.157393, 588.912782, 649.198218,
        632.91689, 539.242855, 479.914398, 421.492013, 477.7986,
      ],
    ],
    [
      'air passengers',
      'additive',
      airPassengers,
      482.19263721,
      96360.587448,
      [
        467.680106, 460.564027, 504.730147, 504.008669, 504.726515, 542.125755, 573.069047,
        548.576468, 474.062565, 440.522261, 414.399129, 463.33841,
      ],
    ],
  ] as const)('%s, %s, fixed weights', (_, season, values, level, sse, next) => {
    const { smoothing, states, errors } = run(
      winters(season),
      { alpha: 0.5, beta: 0.1, gamma: 0.3 },
      rStart(values, 12, season),
      values.slice(12),
    );
    expect(states.level).toBeCloseTo(level, 7);
    expect(squares(errors)).toBeCloseTo(sse, 5);
    close(predictAll(smoothing, 12), next, 5);
  });

  it('tourists: trend and a season that multiplies, with published states', () => {
    // Source: statsmodels test_holtwinters.py, lines 301-356 (REFERENCES W6); its weights come out at nothing, so the
    // states stay as they start.
    const start = at(50.5683335, 0.9129274, [0.83535867, 0.50297119, 0.62439273, 0.67723128]);
    const { smoothing } = run(winters('multiplicative'), {}, start, austourists);
    const drift = at(50.5683335 + 24 * 0.9129274, 0.9129274, start.seasonal);
    expect(smoothing.states().level).toBeCloseTo(drift.level, 9);
    close(predictAll(smoothing, 4), [61.3083, 37.373, 46.9652, 51.5578], 3);
  });
});

it('a copy goes its own way and stands where the first stood', () => {
  const first = new Smoothing(
    winters('additive'),
    { alpha: 0.5, beta: 0.1, gamma: 0.3, phi: 0.9 },
    at(10, 1, [1, 2, -3]),
  );
  first.step(12);
  const copy = first.copy();
  expect(predictAll(copy, 5)).toEqual(predictAll(first, 5));
  copy.step(99);
  expect(copy.predict(1)).not.toBe(first.predict(1));
});

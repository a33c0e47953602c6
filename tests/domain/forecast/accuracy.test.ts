import { describe, expect, it } from 'vitest';
import {
  meanAbsoluteError,
  meanAbsoluteScaledError,
  rootMeanSquaredError,
} from '../../../src/domain/forecast/accuracy.ts';
import { Mean, Naive } from '../../../src/domain/forecast/simple-steppers.ts';
import { predictAll, type Stepper, stepErrors } from '../../../src/domain/forecast/stepper.ts';
import { beer } from './series.ts';

const after = (stepper: Stepper, values: readonly number[]): Stepper => {
  stepErrors(stepper, values);
  return stepper;
};

describe('beer, forecast ten quarters ahead', () => {
  // Source: Hyndman and Athanasopoulos, Forecasting: principles and practice, 2nd ed., section 3.4:
  // the printed table (REFERENCES A1, A2, A3), from memory, which recomputes to every digit. MASE there is scaled by the
  // seasonal naive method on the training years.
  const scale = meanAbsoluteScaledError([1], beer.train, 4) ?? 0;

  it.each([
    ['mean', after(new Mean(beer.train[0], 1), beer.train.slice(1)), 38.45, 34.83, 2.44],
    ['naive', after(new Naive([beer.train[0]]), beer.train.slice(1)), 62.69, 57.4, 4.01],
    [
      'seasonal naive',
      after(new Naive(beer.train.slice(0, 4)), beer.train.slice(4)),
      14.31,
      13.4,
      0.94,
    ],
  ] as const)('%s', (_, stepper, rmse, mae, mase) => {
    const errors = predictAll(stepper, 10).map((value, index) => (beer.test[index] ?? 0) - value);
    expect(rootMeanSquaredError(errors)).toBeCloseTo(rmse, 2);
    expect(meanAbsoluteError(errors)).toBeCloseTo(mae, 2);
    expect(meanAbsoluteError(errors) * scale).toBeCloseTo(mase, 2);
  });
});

it('MASE scaled on the series itself', () => {
  // Source: rdrr.io/cran/Metrics, mase: REFERENCES A6.
  const actual = [1.1, 1.9, 3, 4.4, 5, 5.6];
  const predicted = [0.9, 1.8, 2.5, 4.5, 5, 6.2];
  const errors = actual.map((value, index) => value - (predicted[index] ?? 0));
  expect(meanAbsoluteError(errors)).toBeCloseTo(0.25, 12);
  expect(meanAbsoluteScaledError(errors, actual, 1)).toBeCloseTo(0.2777778, 7);
});

it('MASE of three values', () => {
  // Source: rdrr.io max-graham, mase: REFERENCES A7.
  expect(meanAbsoluteScaledError([0, 2, 1], [1, 4, 4], 1)).toBeCloseTo(0.66667, 5);
});

it('MASE has no meaning where the history repeats itself', () => {
  // REFERENCES A8.
  expect(meanAbsoluteScaledError([1], [3, 3, 3], 1)).toBeUndefined();
  expect(meanAbsoluteScaledError([1], [3], 12)).toBeUndefined();
});

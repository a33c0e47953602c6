/** A forecasting method at work: it meets one period's value after another and says what comes next. */
export interface Stepper {
  /** What it expects so many periods ahead, from 1. */
  predict(ahead: number): number;
  /** Learns the next period's value. */
  step(value: number): void;
  copy(): Stepper;
}

/** Runs a method over values and answers what it got wrong each time, one period ahead (value − forecast). */
export function stepErrors(stepper: Stepper, values: Iterable<number>): number[] {
  const errors: number[] = [];
  for (const value of values) {
    errors.push(value - stepper.predict(1));
    stepper.step(value);
  }
  return errors;
}

/** The squares of those errors added up, but for the first `skipped`: without a list, since a search asks often. */
export function squaredErrors(
  stepper: Stepper,
  values: readonly number[],
  skipped: number,
): number {
  let sum = 0;
  for (let index = 0; index < values.length; index += 1) {
    const value = values[index] ?? 0;
    if (index >= skipped) sum += (value - stepper.predict(1)) ** 2;
    stepper.step(value);
  }
  return sum;
}

/** Forecasts for the next periods. */
export function predictAll(stepper: Stepper, periods: number): number[] {
  return Array.from({ length: periods }, (_, index) => stepper.predict(index + 1));
}

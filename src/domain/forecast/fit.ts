import { type Method, searchOf } from './method.ts';
import { minimise } from './minimise.ts';
import { squaredErrors, type Stepper, stepErrors } from './stepper.ts';

/** A method with its parameters settled, run to the end of the history. */
export interface Fit {
  readonly method: Method;
  readonly parameters: readonly number[];
  /** One period ahead, for the values from `method.known` on. */
  readonly errors: readonly number[];
  /** Stands after the last value. */
  readonly stepper: Stepper;
}

/**
 * Fits a method to a history by least squared one-step error. Errors count from the value at
 * `from`, so that methods which start later can be held against it.
 */
export function fit(method: Method, values: readonly number[], from = method.known): Fit {
  const rest = values.slice(method.known);
  const skipped = from - method.known;
  const parameters =
    method.parameters.length === 0
      ? []
      : minimise((at) => squaredErrors(method.begin(at), rest, skipped), searchOf(method));
  const stepper = method.begin(parameters);
  const errors = stepErrors(stepper, rest);
  return { method, parameters, errors, stepper };
}

export function squares(errors: readonly number[]): number {
  let sum = 0;
  for (const error of errors) sum += error * error;
  return sum;
}

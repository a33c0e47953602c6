import { type Fit, fit, squares } from './fit.ts';
import type { Method } from './method.ts';

/** How a method did in the choice; the least score is chosen. */
export interface Contender {
  readonly method: Method;
  /** By `rank` AICc, by `crossValidate` the mean squared error; the less the better. */
  readonly score: number;
}

/** Errors of a millionth of the usual value are no error: below it methods differ by figures used alone. */
const NO_ERROR = 1e-6;

/**
 * Judges methods by AICc of their one-step errors over the values that none of them starts from, so
 * that a season seen once can't pass for a season foreseen. The best first; ties go to the plainer,
 * which stands earlier. `values` average about 1.
 */
export function rank(methods: readonly Method[], values: readonly number[]): Contender[] {
  const from = Math.max(...methods.map(({ known }) => known));
  return methods
    .map((method) => ({ method, score: score(fit(method, values, from), from) }))
    .sort((a, b) => (a.score === b.score ? 0 : a.score - b.score));
}

function score({ method, errors }: Fit, from: number): number {
  const counted = errors.slice(from - method.known);
  const n = counted.length;
  const mean = squares(counted) / n;
  if (!Number.isFinite(mean)) return Infinity;
  // The spread of the errors is itself one figure.
  const k = method.parameters.length + (method.borrowsSlope ? 1 : 0) + 1;
  const correction = (2 * k * (k + 1)) / Math.max(1, n - k - 1);
  return n * Math.log(Math.max(mean, NO_ERROR ** 2)) + 2 * k + correction;
}

/** Newest values that are foreseen in turn; each takes a fit of every method. */
const MOST_FORESEEN = 12;

/**
 * Judges methods by time-series cross-validation: each of the newest values is foreseen by methods fitted to those before
 * it alone, and the least mean squared error comes first (forecasting on a rolling origin; Tashman, International
 * Journal of Forecasting 16, 2000, from memory). A method that some of those beginnings are too short for is out.
 */
export function crossValidate(
  methodsOf: (values: readonly number[]) => readonly Method[],
  values: readonly number[],
): Contender[] {
  const first = values.length - Math.min(MOST_FORESEEN, Math.floor(values.length / 2));
  const sums = new Map(
    methodsOf(values).map((method) => [method.name, { method, sum: 0, times: 0 }]),
  );
  for (let at = first; at < values.length; at += 1) {
    const before = values.slice(0, at);
    for (const method of methodsOf(before)) {
      const known = sums.get(method.name);
      if (known === undefined) continue;
      known.sum += ((values[at] ?? 0) - fit(method, before).stepper.predict(1)) ** 2;
      known.times += 1;
    }
  }
  const all = values.length - first;
  return [...sums.values()]
    .filter(({ times }) => times === all)
    .map(({ method, sum }) => ({ method, score: sum / all }))
    .sort((a, b) => a.score - b.score);
}

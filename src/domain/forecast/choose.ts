import { type Fit, fit, squares } from './fit.ts';
import type { Method } from './method.ts';

/** How a method did in the choice; the least score is chosen. */
export interface Contender {
  readonly method: Method;
  /** Akaike's information criterion with the correction for few values (AICc). */
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

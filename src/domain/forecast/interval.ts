import { dice } from '../kernel/dice.ts';
import type { Fit } from './fit.ts';

/** The span that a share of futures falls in. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}

const FUTURES = 2000;
const SEED = 1;

/**
 * Prediction intervals for the next periods: many futures are played, each with errors drawn from
 * those the method really made, and the middle `percent` of them is kept. Seeded, so always the same.
 */
export function intervals(fit: Fit, periods: number, percent: number): Interval[] {
  const roll = dice(SEED);
  const futures: number[][] = Array.from({ length: periods }, () => []);
  for (let run = 0; run < FUTURES; run += 1) {
    const stepper = fit.stepper.copy();
    for (const values of futures) {
      const error = fit.errors[Math.floor(roll() * fit.errors.length)] ?? 0;
      // Nobody buys fewer than no bars.
      const value = Math.max(0, stepper.predict(1) + error);
      values.push(value);
      stepper.step(value);
    }
  }
  const tail = (100 - percent) / 200;
  return futures.map((values) => {
    values.sort((a, b) => a - b);
    return { low: quantile(values, tail), high: quantile(values, 1 - tail) };
  });
}

/** The value that a share of sorted values stays under, in between where it falls between two. */
export function quantile(sorted: readonly number[], share: number): number {
  const at = share * (sorted.length - 1);
  const below = sorted[Math.floor(at)] ?? 0;
  const above = sorted[Math.ceil(at)] ?? below;
  return below + (at - Math.floor(at)) * (above - below);
}

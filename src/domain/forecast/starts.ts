import type { SmoothingStates } from './smoothing.ts';

/**
 * Where a seasonal smoothing starts, after the first season: that season's own average and figures,
 * with the slope from its average to the second season's taken out. On made-up series of two to five
 * seasons this forecast better than starting from a decomposition of two seasons, and on a hundred
 * values and more it makes no difference that shows.
 */
export function firstSeasonStart(
  values: readonly number[],
  length: number,
  season: 'additive' | 'multiplicative',
  trend: boolean,
): SmoothingStates {
  const first = average(values.slice(0, length));
  const slope = trend ? (average(values.slice(length, 2 * length)) - first) / length : 0;
  const middle = (length - 1) / 2;
  const seasonal = values.slice(0, length).map((value, index) => {
    const line = first + slope * (index - middle);
    return season === 'additive' ? value - line : value / line;
  });
  return { level: first + slope * middle, trend: slope, seasonal };
}

/** Least squares line through values that stand at 1, 2, 3, …; the intercept is at 0. */
export function lineThrough(values: readonly number[]): { intercept: number; slope: number } {
  const middle = (values.length + 1) / 2;
  const mean = average(values);
  let above = 0;
  let below = 0;
  values.forEach((value, index) => {
    above += (index + 1 - middle) * (value - mean);
    below += (index + 1 - middle) ** 2;
  });
  const slope = below === 0 ? 0 : above / below;
  return { intercept: mean - slope * middle, slope };
}

export function average(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

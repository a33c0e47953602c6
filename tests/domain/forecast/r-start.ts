import type { SmoothingStates } from '../../../src/domain/forecast/smoothing.ts';
import { average, lineThrough } from '../../../src/domain/forecast/starts.ts';

/**
 * The starting states of the statistics program R's HoltWinters (src/library/stats/R/HoltWinters.R):
 * a line through the moving averages of the first two seasons, and the averages of what stands above
 * it, centred. Used to reproduce R's printed results.
 */
export function rStart(
  values: readonly number[],
  length: number,
  season: 'additive' | 'multiplicative',
): SmoothingStates {
  const two = values.slice(0, 2 * length);
  const half = length / 2;
  const averages = two.map((_, index) => {
    if (index < half || index + half >= two.length) return undefined;
    const window = two.slice(index - half, index + half + 1);
    const ends = ((window[0] ?? 0) + (window[length] ?? 0)) / 2;
    return (window.slice(1, -1).reduce((sum, value) => sum + value, 0) + ends) / length;
  });
  const { intercept, slope } = lineThrough(averages.flatMap((value) => value ?? []));
  const figures = Array.from({ length }, (_, at) =>
    average(
      averages.flatMap((mean, index) => {
        if (mean === undefined || index % length !== at) return [];
        const value = two[index] ?? 0;
        return season === 'additive' ? [value - mean] : [value / mean];
      }),
    ),
  );
  const middle = average(figures);
  return {
    level: intercept,
    trend: slope,
    seasonal: figures.map((figure) => (season === 'additive' ? figure - middle : figure / middle)),
  };
}

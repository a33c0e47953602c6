import { average } from './starts.ts';

/** Mean absolute error. */
export function meanAbsoluteError(errors: readonly number[]): number {
  return average(errors.map(Math.abs));
}

export function rootMeanSquaredError(errors: readonly number[]): number {
  return Math.sqrt(average(errors.map((error) => error * error)));
}

/**
 * Mean absolute scaled error (Hyndman and Koehler, 2006): MAE over the MAE of "as a season ago" on
 * the history. Under 1 is better than that. Undefined where the history repeats itself exactly or
 * is no longer than a season.
 */
export function meanAbsoluteScaledError(
  errors: readonly number[],
  history: readonly number[],
  season: number,
): number | undefined {
  const scale = meanAbsoluteError(
    history.slice(season).map((value, index) => value - (history[index] ?? 0)),
  );
  return scale > 0 ? meanAbsoluteError(errors) / scale : undefined;
}

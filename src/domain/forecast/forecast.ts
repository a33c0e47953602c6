import { answer, andThen, notYet, type Result, wrong } from '../kernel/result.ts';
import { meanAbsoluteError, meanAbsoluteScaledError, rootMeanSquaredError } from './accuracy.ts';
import { type Contender, crossValidate, rank } from './choose.ts';
import { type Fit, fit } from './fit.ts';
import { type Interval, intervals } from './interval.ts';
import { ENOUGH_TO_CHOOSE, inWords } from './in-words.ts';
import { isLumpy } from './lumpy.ts';
import { lumpyMethodsFor, mean, methodsFor } from './methods.ts';
import { average } from './starts.ts';
import { predictAll } from './stepper.ts';

/** How a forecast was made and how far to trust it; the companion to the bare numbers. */
export interface ForecastReport {
  readonly method: string;
  /** The same as a maker would say it. */
  readonly inWords: string;
  /** What was found by least error, such as alpha 0.3. */
  readonly parameters: readonly { readonly name: string; readonly value: number }[];
  readonly periods: readonly ForecastPeriod[];
  /** Share of futures, in %, that the intervals hold. */
  readonly intervalPercent: number;
  /** Errors one period ahead on the history, in its own unit. */
  readonly mae: number;
  readonly rmse: number;
  /** MAE over that of "as a season ago" (or "as last time" without a season); under 1 is better. */
  readonly mase: number | undefined;
  /** Every method that was tried, the best first, with what it was judged by. */
  readonly tried: readonly { readonly method: string; readonly score: number }[];
}

export interface ForecastPeriod extends Interval {
  readonly value: number;
}

/** A year of months is the usual season. */
export const USUAL_SEASON = 12;
const MOST_PERIODS = 600;
const LONGEST_SEASON = 366;
const USUAL_INTERVAL_PERCENT = 95;
/**
 * Newest values that a forecast rests on, or three seasons where those are more: forty years of months.
 * Older sales say nothing of tomorrow's, and a search through ten thousand days took 17 seconds.
 */
const NEWEST_VALUES = 480;
const NEWEST_SEASONS = 3;

/**
 * Forecasts the next periods of a history without gaps (0 where nothing was sold), by the method that
 * the history bears out best. Never below 0. Fails with a sentence where there is too little history
 * or a number makes no sense.
 */
export function forecast(
  history: readonly number[],
  periods: number,
  season: number = USUAL_SEASON,
): Result<number[]> {
  return andThen(chosen(history, periods, season), ({ best, scale }) =>
    answer(atLeastNothing(predictAll(best.stepper, periods), scale)),
  );
}

/** The same forecast with its method, parameters, errors and prediction intervals. */
export function forecastReport(
  history: readonly number[],
  periods: number,
  season: number = USUAL_SEASON,
  intervalPercent: number = USUAL_INTERVAL_PERCENT,
): Result<ForecastReport> {
  return andThen(chosen(history, periods, season), ({ best, scale, contenders, used }) => {
    const values = atLeastNothing(predictAll(best.stepper, periods), scale);
    const spans = intervals(best, periods, intervalPercent);
    const errors = best.errors.map((error) => error * scale);
    return answer({
      method:
        used.length < history.length
          ? `${best.method.name}, from the newest ${used.length} of ${history.length} values`
          : best.method.name,
      inWords: inWords(best.method, { known: used.length, isLumpy: isLumpy(used) }),
      parameters: best.method.parameters.map(({ name }, index) => ({
        name,
        value: (best.parameters[index] ?? 0) * (name.startsWith('starting') ? scale : 1),
      })),
      periods: values.map((value, index) => ({
        value,
        // Where all errors so far went one way, every future played lies beside the forecast.
        low: Math.min(value, (spans[index]?.low ?? 0) * scale),
        high: Math.max(value, (spans[index]?.high ?? 0) * scale),
      })),
      intervalPercent,
      mae: meanAbsoluteError(errors),
      rmse: rootMeanSquaredError(errors),
      mase: meanAbsoluteScaledError(errors, used, used.length > season ? season : 1),
      tried: contenders.map(({ method, score }) => ({ method: method.name, score })),
    });
  });
}

interface Choice {
  readonly best: Fit;
  readonly contenders: readonly Contender[];
  /** The newest values of the history, oldest first. */
  readonly used: readonly number[];
  /** The history was divided by this. */
  readonly scale: number;
}

function chosen(history: readonly number[], periods: number, season: number): Result<Choice> {
  const refusal = troubleWith(history, periods, season);
  if (refusal !== undefined) return refusal;
  const used = history.slice(-Math.max(NEWEST_VALUES, NEWEST_SEASONS * season));
  const key = [season, ...used].join();
  const known = kept.get(key);
  if (known !== undefined) return answer(known);
  const choice = choose(used, season);
  if (kept.size >= MOST_KEPT) kept.clear();
  kept.set(key, choice);
  return answer(choice);
}

/** The last choices: a sheet asks for the forecast and its report of one history in cells of their own. */
const kept = new Map<string, Choice>();
const MOST_KEPT = 60;

function choose(used: readonly number[], season: number): Choice {
  // Methods see values that average 1, so that grams and pallets are forecast alike.
  const scale = average(used) || 1;
  const values = used.map((value) => value / scale);
  const contenders = contendersFor(values, season);
  const method = contenders[0]?.method ?? mean(values);
  return { best: fit(method, values), contenders, used, scale };
}

function contendersFor(values: readonly number[], season: number): Contender[] {
  if (values.length < ENOUGH_TO_CHOOSE) return rank([mean(values)], values);
  return isLumpy(values)
    ? crossValidate((known) => lumpyMethodsFor(known, season), values)
    : rank(methodsFor(values, season), values);
}

function troubleWith(
  history: readonly number[],
  periods: number,
  season: number,
): Result<never> | undefined {
  if (!isWholeUpTo(periods, MOST_PERIODS))
    return wrong(`periods is ${periods}. Give a whole number from 1 to ${MOST_PERIODS}.`);
  if (!isWholeUpTo(season, LONGEST_SEASON)) {
    return wrong(
      `season is ${season}. Give how many periods make a season, 1 to ${LONGEST_SEASON}: 12 for months, 1 for none.`,
    );
  }
  const odd = history.findIndex((value) => !Number.isFinite(value) || value < 0);
  if (odd >= 0)
    return wrong(`Value ${odd + 1} of history is ${history[odd]}. Sales are 0 or more.`);
  if (history.length < 2) {
    return notYet(
      `history has ${history.length === 0 ? 'no values' : 'one value'}. A forecast takes two or more, and two seasons to know the season.`,
    );
  }
  return undefined;
}

const isWholeUpTo = (value: number, most: number): boolean =>
  Number.isInteger(value) && value >= 1 && value <= most;

const atLeastNothing = (values: readonly number[], scale: number): number[] =>
  values.map((value) => Math.max(0, value * scale));

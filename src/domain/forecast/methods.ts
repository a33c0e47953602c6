import { Lumpy, lumpyStart } from './lumpy.ts';
import type { Method, Parameter } from './method.ts';
import { Mean, Naive } from './simple-steppers.ts';
import { Smoothing, type SmoothingForm, type SmoothingStates } from './smoothing.ts';
import { average, firstSeasonStart, lineThrough } from './starts.ts';

const weight = (name: string, ...guesses: readonly number[]): Parameter => ({
  name,
  low: 0,
  high: 1,
  guesses,
});
/** With more weight on the newest, one empty month would be all there is (at most 0.3: common practice). */
const lumpyWeight = (name: string, ...guesses: readonly number[]): Parameter => ({
  ...weight(name, ...guesses),
  high: 0.3,
});
const alpha = weight('alpha', 0.3, 0.1, 0.7);
const beta = weight('beta', 0.1, 0.01, 0.3);
const gamma = weight('gamma', 0.1, 0.5, 0.05);
/** Nearer 1 it can't be told from an undamped trend, much lower it is no trend (common practice). */
const phi: Parameter = { name: 'phi', low: 0.8, high: 0.98, guesses: [0.95, 0.9, 0.97] };

/** The methods that a history with something in most periods is long enough for, the plainest first. */
export function methodsFor(values: readonly number[], season: number): Method[] {
  return [mean(values), naive(values), ...lines(values), ...seasonalMethods(values, season)];
}

/** Seasons that a history with many empty periods must have before their pattern is looked at. */
const ENOUGH_SEASONS = 3;

/**
 * The methods for a history with many empty periods. "As a season ago" is none of them: that nothing was sold in one
 * March does not say that nothing is ever sold in March.
 */
export function lumpyMethodsFor(values: readonly number[], season: number): Method[] {
  const plain = [mean(values), lumpyMethod(values)];
  if (season === 1 || values.length < ENOUGH_SEASONS * season) return plain;
  const level = firstSeasonStart(values, season, 'additive', false);
  const form: SmoothingForm = { trend: false, season: 'additive' };
  return [...plain, smoothing('seasonal smoothing, additive', form, [alpha, gamma], level)];
}

/** The plainest method of all, for histories too short to tell anything else. */
export function mean(values: readonly number[]): Method {
  return {
    name: 'average',
    parameters: [],
    known: 1,
    borrowsSlope: false,
    begin: () => new Mean(values[0] ?? 0, 1),
  };
}

function naive(values: readonly number[], season = 1): Method {
  return {
    name: season === 1 ? 'naive (as last time)' : 'seasonal naive (as a season ago)',
    parameters: [],
    known: season,
    borrowsSlope: false,
    begin: () => new Naive(values.slice(0, season)),
  };
}

function lumpyMethod(values: readonly number[]): Method {
  const { chance, size } = lumpyStart(values);
  return {
    name: 'lumpy demand (Teunter, Syntetos and Babai)',
    parameters: [lumpyWeight('alpha', 0.1, 0.02, 0.25), lumpyWeight('beta', 0.05, 0.01, 0.25)],
    known: 0,
    borrowsSlope: false,
    begin: ([sizes = 0, chances = 0]) => new Lumpy({ alpha: sizes, beta: chances }, chance, size),
  };
}

/** Simple smoothing and Holt's, whose starting level and slope are found by least error as well. */
function lines(values: readonly number[]): Method[] {
  const { intercept, slope } = lineThrough(values);
  const spread = Math.max(...values) - Math.min(...values);
  const early = average(values.slice(0, 3));
  const level: Parameter = {
    name: 'starting level',
    low: Math.min(...values) - spread,
    high: Math.max(...values) + spread,
    guesses: [intercept, early, values[0] ?? 0],
  };
  const step: Parameter = {
    name: 'starting slope',
    low: -spread,
    high: spread,
    guesses: [slope, slope, (values[1] ?? 0) - (values[0] ?? 0)],
  };
  const simple = smoothing('simple smoothing', { trend: false, season: 'none' }, [
    alpha,
    { ...level, guesses: [early, average(values), values[0] ?? 0] },
  ]);
  const holt: SmoothingForm = { trend: true, season: 'none' };
  return [
    simple,
    smoothing('Holt (trend)', holt, [alpha, beta, level, step]),
    smoothing('Holt, damped trend', holt, [alpha, beta, phi, level, step]),
  ];
}

function seasonalMethods(values: readonly number[], season: number): Method[] {
  if (season === 1 || values.length <= season) return [];
  const known = [naive(values, season)];
  if (values.length < 2 * season) return known;
  // A season that multiplies has no meaning at nothing sold.
  const seasons = values.every((value) => value > 0)
    ? (['additive', 'multiplicative'] as const)
    : (['additive'] as const);
  for (const kind of seasons) {
    const level = firstSeasonStart(values, season, kind, false);
    const line = firstSeasonStart(values, season, kind, true);
    const trendless: SmoothingForm = { trend: false, season: kind };
    const trend: SmoothingForm = { trend: true, season: kind };
    known.push(
      smoothing(`seasonal smoothing, ${kind}`, trendless, [alpha, gamma], level),
      smoothing(`Holt-Winters, ${kind}`, trend, [alpha, beta, gamma], line),
      smoothing(`Holt-Winters, ${kind}, damped trend`, trend, [alpha, beta, gamma, phi], line),
    );
  }
  return known;
}

/** A smoothing from given states, or from a level and slope that are among the parameters. */
function smoothing(
  name: string,
  form: SmoothingForm,
  parameters: readonly Parameter[],
  states?: SmoothingStates,
): Method {
  const at = (wanted: string, from: readonly number[], otherwise: number): number =>
    from[parameters.findIndex((parameter) => parameter.name === wanted)] ?? otherwise;
  return {
    name,
    parameters,
    known: states?.seasonal.length ?? 0,
    borrowsSlope: states !== undefined && form.trend,
    begin: (found) =>
      new Smoothing(
        form,
        {
          alpha: at('alpha', found, 0),
          beta: at('beta', found, 0),
          gamma: at('gamma', found, 0),
          phi: at('phi', found, 1),
        },
        states ?? {
          level: at('starting level', found, 0),
          trend: at('starting slope', found, 0),
          seasonal: [],
        },
      ),
  };
}

import type { Search } from './minimise.ts';
import type { Stepper } from './stepper.ts';

/** A way to forecast, ready to be fitted to one history. */
export interface Method {
  /** As the maker reads it. */
  readonly name: string;
  /** Figures found by least error, by name; none where there is nothing to choose. */
  readonly parameters: readonly Parameter[];
  /** First values of the history that it starts from, so that it has no error there. */
  readonly known: number;
  /** Whether it took a slope from values it is judged by: one more figure that counts. */
  readonly borrowsSlope: boolean;
  /** Begins after the `known` values. */
  readonly begin: (parameters: readonly number[]) => Stepper;
}

export interface Parameter {
  readonly name: string;
  readonly low: number;
  readonly high: number;
  readonly guesses: readonly number[];
}

/** Where to look for a method's parameters: each one's first guesses together, then the second ones. */
export function searchOf({ parameters }: Method): Search {
  const rounds = Math.max(...parameters.map(({ guesses }) => guesses.length));
  return {
    low: parameters.map(({ low }) => low),
    high: parameters.map(({ high }) => high),
    guesses: Array.from({ length: rounds }, (_, round) =>
      parameters.map(({ guesses }) => guesses[Math.min(round, guesses.length - 1)] ?? 0),
    ),
  };
}

/**
 * Why there is no answer:
 * - `wrong`: an argument or a row must be mended (#VALUE!);
 * - `not yet`: nothing to answer with so far (#N/A);
 * - `divides by nothing`: the sum asked for has no meaning (#DIV/0!).
 */
export type FailureKind = 'wrong' | 'not yet' | 'divides by nothing';

export interface Failure {
  readonly kind: FailureKind;
  /** What is wrong and what to do, for the maker. */
  readonly sentence: string;
}

export type Result<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly failure: Failure };

export function answer<T>(value: T): Result<T> {
  return { ok: true, value };
}

function refuse(kind: FailureKind, sentence: string): Result<never> {
  return { ok: false, failure: { kind, sentence } };
}

export const wrong = (sentence: string): Result<never> => refuse('wrong', sentence);

/**
 * A failure whose sentence is made only where it is read. For look-ups: finding the nearest known
 * name takes long, and of a hundred thousand failed look-ups at most twenty are shown.
 */
export function wrongBecause(sentence: () => string): Result<never> {
  return {
    ok: false,
    failure: {
      kind: 'wrong',
      get sentence() {
        return sentence();
      },
    },
  };
}

export const notYet = (sentence: string): Result<never> => refuse('not yet', sentence);

/**
 * Goes on with an answer, or hands the failure on. Not called `then`: a module that exports `then` is
 * taken for a promise by dynamic import, which waits for ever.
 */
export function andThen<T, U>(result: Result<T>, next: (value: T) => Result<U>): Result<U> {
  return result.ok ? next(result.value) : result;
}

/** All answers in order, or the first failure. */
export function all<T>(results: Iterable<Result<T>>): Result<T[]> {
  const values: T[] = [];
  for (const result of results) {
    if (!result.ok) return result;
    values.push(result.value);
  }
  return answer(values);
}

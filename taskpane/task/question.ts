import { isListOfTexts } from './kept.ts';

/** Something that is more often a slip than meant: it is asked before anything is written. */
export interface Question {
  /** Names what is asked and the figures it is asked of, so that a yes holds for these alone. */
  readonly key: string;
  readonly sentence: string;
  /** What the maker says by ticking. */
  readonly yes: string;
}

/** A draft that keeps what the maker was asked and said yes to, by key. */
export interface Asked {
  readonly sure?: readonly string[];
}

/** Why nothing is written yet. */
export const ASKED_FIRST = 'Something is asked above. Tick it, or go back and change it.';

/** Those that the maker has not said yes to. */
export const unanswered = (questions: readonly Question[], { sure = [] }: Asked): Question[] =>
  questions.filter(({ key }) => !sure.includes(key));

/** Whether a kept value is what `Asked` keeps; drafts of before have none. */
export const isSure = (value: unknown): boolean => value === undefined || isListOfTexts(value);

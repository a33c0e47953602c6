/** The three ways a cell can fail to answer; hosts turn them into their own cell errors. */
export type FailureCode = '#VALUE!' | '#N/A' | '#DIV/0!';

/** Thrown at the functions' edge only: a cell error with a sentence for the maker. */
export class CellFailure extends Error {
  readonly code: FailureCode;

  constructor(code: FailureCode, sentence: string) {
    super(sentence);
    this.name = 'CellFailure';
    this.code = code;
  }
}

import { type Exact, toCell } from '../src/domain/kernel/exact.ts';
import type { Failure, FailureKind, Result } from '../src/domain/kernel/result.ts';
import { CellFailure, type FailureCode } from './failure.ts';

/** What a function puts in cells: one value, or rows that spill with a header row. */
export type CellAnswer = string | number | boolean;
export type SpillAnswer = CellAnswer[][];

const codes: Readonly<Record<FailureKind, FailureCode>> = {
  wrong: '#VALUE!',
  'not yet': '#N/A',
  'divides by nothing': '#DIV/0!',
};

/** The value of a result, or the cell error with its sentence. */
export function settle<T>(result: Result<T>): T {
  if (result.ok) return result.value;
  throw failureFor(result.failure);
}

function failureFor({ kind, sentence }: Failure): CellFailure {
  return new CellFailure(codes[kind], sentence);
}

/** An exact result as a cell's number. */
export function settleNumber(result: Result<Exact>): number {
  return toCell(settle(result));
}

/** A picogram: thirds have no last digit, and what a cell's binary adds tells nobody more. */
const CELL_DECIMALS = 12;

/** A quantity to weigh or count as a cell's number. */
export function amountCell(quantity: Exact): number {
  return toCell(quantity.toDecimalPlaces(CELL_DECIMALS));
}

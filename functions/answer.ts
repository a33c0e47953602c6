import type { Day } from '../src/domain/kernel/day.ts';
import { type Exact, toCell } from '../src/domain/kernel/exact.ts';
import type { Failure, FailureKind, Result } from '../src/domain/kernel/result.ts';
import { CellFailure, type FailureCode } from './failure.ts';
import type { ValueOf } from './kinds.ts';
import type { Answers, FunctionRecord, List, Records } from './records/record.ts';

/** What stands in one cell, and the rows of a list below its header. */
export type CellAnswer = string | number | boolean;
export type CellRows = readonly (readonly CellAnswer[])[];

/** The arguments that a record tells of, read; and today where its answer rests on the day. */
export type GivenTo<R extends FunctionRecord> = {
  readonly [Name in keyof R['takes']]: ValueOf<R['takes'][Name]>;
} & ('day' extends R['restsOn'][number] ? { readonly today: Day } : unknown);

type Outcome<A extends Answers> = A extends List
  ? CellRows | (A extends { orNumber: true } ? number : never)
  : A extends 'numbers'
    ? readonly number[]
    : A extends 'number'
      ? Exact | number
      : string;

/** An answer for each record of a group, under its id. */
export type AnswersOf<G extends Records> = {
  readonly [Id in keyof G]: (given: GivenTo<G[Id]>) => Result<Outcome<G[Id]['answers']>>;
};

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

/** A picogram: thirds have no last digit, and what a cell's binary adds tells nobody more. */
const CELL_DECIMALS = 12;

/** A quantity to weigh or count as a cell's number. */
export function amountCell(quantity: Exact): number {
  return toCell(quantity.toDecimalPlaces(CELL_DECIMALS));
}

/** In a list, what has no number stays blank. */
export const cellOrBlank = (value: Exact | undefined): number | string =>
  value === undefined ? '' : toCell(value);

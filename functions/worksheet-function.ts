import { toCell } from '../src/domain/kernel/exact.ts';
import type { Exact } from '../src/domain/kernel/exact.ts';
import type { Result } from '../src/domain/kernel/result.ts';
import { type CellRows, settle } from './answer.ts';
import { askedBefore } from './asked-before.ts';
import { finite } from './finite.ts';
import { givenBy } from './given.ts';
import type { Answers, FunctionRecord } from './records/record.ts';

/** A worksheet function: raw cell arguments in, a cell or rows out; throws `CellFailure`. */
export type WorksheetFunction = (...cellArguments: unknown[]) => unknown;

/** Whatever a record's arguments and answer are; `AnswersOf` holds the two together. */
export type AnyAnswer = (given: never) => Result<unknown>;

/** The function that a record tells of: it reads cells, asks for the answer and puts that in cells. */
export function worksheetFunction(
  id: string,
  record: FunctionRecord,
  answer: AnyAnswer,
): WorksheetFunction {
  const given = givenBy(record);
  const ask = finite((...cells) => inCells(record.answers, settle(answer(given(cells) as never))));
  return record.restsOn.includes('memory') ? ask : askedBefore(id, record, ask);
}

function inCells(answers: Answers, outcome: unknown): unknown {
  if (answers === 'number') return numberCell(outcome as Exact | number);
  if (answers === 'numbers') return (outcome as readonly number[]).map((value) => [value]);
  if (answers === 'text' || !Array.isArray(outcome)) return outcome;
  return [[...answers.columns], ...(outcome as CellRows)];
}

const numberCell = (value: Exact | number): number =>
  typeof value === 'number' ? value : toCell(value);

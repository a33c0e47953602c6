import { CellFailure } from './failure.ts';
import type { WorksheetFunction } from './worksheet-function.ts';

/** The same function, failing with a sentence where a number of its answer is past what a cell can hold. */
export function finite(worksheetFunction: WorksheetFunction): WorksheetFunction {
  return (...cellArguments) => {
    const answer = worksheetFunction(...cellArguments);
    if (isBeyondCells(answer)) {
      throw new CellFailure(
        '#VALUE!',
        'The answer is too large for a cell. Look for a number that is far too large, or far too near to 0.',
      );
    }
    return answer;
  };
}

const isBeyondCells = (answer: unknown): boolean =>
  Array.isArray(answer)
    ? answer.some(isBeyondCells)
    : typeof answer === 'number' && !Number.isFinite(answer);

import { bookAnswers, todayAnswers } from './answers/book.ts';
import { buyAnswers } from './answers/buy.ts';
import { costAnswers } from './answers/cost.ts';
import { labelAnswers } from './answers/label.ts';
import { makeAnswers } from './answers/make.ts';
import { measureAnswers } from './answers/measure.ts';
import { planAnswers } from './answers/plan.ts';
import { accountsAnswers } from './answers/accounts.ts';
import { sellAnswers } from './answers/sell.ts';
import { stockAnswers } from './answers/stock.ts';
import { traceAnswers } from './answers/trace.ts';
import { type FunctionId, records } from './records/index.ts';
import { type AnyAnswer, worksheetFunction, type WorksheetFunction } from './worksheet-function.ts';

const answers: Readonly<Record<FunctionId, AnyAnswer>> = {
  ...bookAnswers,
  ...makeAnswers,
  ...costAnswers,
  ...sellAnswers,
  ...accountsAnswers,
  ...stockAnswers,
  ...buyAnswers,
  ...planAnswers,
  ...labelAnswers,
  ...traceAnswers,
  ...todayAnswers,
  ...measureAnswers,
};

/** Every worksheet function by its id in the namespace POUR; none ever answers with what is no number. */
export const functions: Readonly<Record<string, WorksheetFunction>> = Object.fromEntries(
  Object.entries(answers).map(([id, answer]) => [
    id,
    worksheetFunction(id, records[id as FunctionId], answer),
  ]),
);

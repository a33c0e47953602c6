import { findDesign } from '../../src/domain/book/find.ts';
import { type Exact, toCell } from '../../src/domain/kernel/exact.ts';
import { andThen, answer } from '../../src/domain/kernel/result.ts';
import { checksOf } from '../../src/domain/label/checks.ts';
import { ingredientsText } from '../../src/domain/label/ingredients.ts';
import type { AnswersOf } from '../answer.ts';
import type { labelRecords } from '../records/label.ts';

export const labelAnswers: AnswersOf<typeof labelRecords> = {
  INGREDIENTS: ({ design, book }) =>
    andThen(findDesign(book, design), (found) => ingredientsText(book, found)),

  CHECKS: ({ design, book, today }) =>
    andThen(findDesign(book, design), (found) =>
      andThen(checksOf(book, found, today), (lines) =>
        answer(
          lines.map(({ check, value, limit, result, source }) => [
            check,
            asCell(value),
            asCell(limit),
            result,
            source,
          ]),
        ),
      ),
    ),
};

const asCell = (value: Exact | string): number | string =>
  typeof value === 'string' ? value : toCell(value);

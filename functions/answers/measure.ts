import { findMaterial } from '../../src/domain/book/find.ts';
import { andThen, wrong } from '../../src/domain/kernel/result.ts';
import { convert } from '../../src/domain/measure/convert.ts';
import type { AnswersOf } from '../answer.ts';
import type { measureRecords } from '../records/measure.ts';

export const measureAnswers: AnswersOf<typeof measureRecords> = {
  /** In the unit wanted. */
  AMOUNT: ({ quantity, from, to, material, book }) => {
    if (material === undefined) return convert(quantity, from, to);
    if (book === undefined)
      return wrong(`book is blank. Give the cell named Book, which knows ${material}.`);
    return andThen(findMaterial(book, material), (found) => convert(quantity, from, to, found));
  },
};

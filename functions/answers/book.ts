import { answer, andThen, wrong } from '../../src/domain/kernel/result.ts';
import { indexAfter, indexOf } from '../../src/domain/stock/ledger-index.ts';
import { recogniseTables, readBook } from '../../src/workbook/read/read-book.ts';
import type { AnswersOf } from '../answer.ts';
import { carryAnswers } from '../asked-before.ts';
import { lastRemembered, remember, remembered } from '../books.ts';
import type { bookRecords, todayRecords } from '../records/book.ts';

export const bookAnswers: AnswersOf<typeof bookRecords> = {
  /** The handle: the same tables give the same handle. */
  BOOK: ({ tables }) => {
    if (tables.length === 0) {
      return wrong(
        'Give BOOK your tables, each with its headers: =POUR.BOOK(Materials[[#Headers],[#Data]], …).',
      );
    }
    const before = lastRemembered();
    return andThen(recogniseTables(tables, before), (recognised) => {
      if (remembered(recognised.handle) !== undefined) return answer(recognised.handle);
      return andThen(readBook(recognised, before), (read) => {
        const touched = before && indexAfter(before, read);
        if (before !== undefined && touched !== undefined) carryAnswers(before, read, touched);
        // Sorted by item here, so that no answer has to go through the whole ledger.
        indexOf(read);
        remember(read);
        return answer(recognised.handle);
      });
    });
  },
};

export const todayAnswers: AnswersOf<typeof todayRecords> = {
  /** The date as its number. */
  TODAY: ({ today }) => answer(today),
};

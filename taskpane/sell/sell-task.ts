import type { Book } from '../../src/domain/book/book.ts';
import { nameKey } from '../../src/domain/kernel/names.ts';
import { andThen, answer, type Result, wrong } from '../../src/domain/kernel/result.ts';
import { postSales } from '../../src/domain/ledger/post-sales.ts';
import type { SalesPosting, SellingDay } from '../../src/domain/ledger/sale.ts';
import { undoSales } from '../../src/domain/ledger/undo-sales.ts';
import { changeForSales } from '../../src/workbook/change.ts';
import type { Change } from '../../src/workbook/port.ts';
import { ASKED_FIRST, type Question, unanswered } from '../task/question.ts';
import type { Ready } from '../task/session.ts';
import { taskId } from '../task/task-id.ts';
import { day } from '../format.ts';
import type { TaskKind, Who } from '../task/task-kind.ts';
import { dayOfDraft } from './day-of-draft.ts';
import { sellingDays } from './selling-days.ts';
import { keepSellDraft, newSellDraft, restoreSellDraft, type SellDraft } from './draft.ts';

/** Recording what a fair or the counter sold on one day, and taking it back. */
export const sellTask: TaskKind<SellDraft> = {
  key: 'sell draft',
  fresh(port) {
    const today = port.today();
    return newSellDraft(taskId('S', today, port.newToken()), today);
  },
  keep: keepSellDraft,
  restore: restoreSellDraft,
  change: (draft, told) => ({ ...draft, ...told }),
  changeToRecord: (state, draft, who) =>
    andThen(salesPosting(state, draft, who), ({ change, questions }) =>
      unanswered(questions, draft).length === 0 ? answer(change) : wrong(ASKED_FIRST),
    ),
  undo: {
    change: ({ book, names }, id, { today, by }) =>
      andThen(undoSales(book, id, today, by), (posting) => changeForSales(posting, names)),
    isUndone: (book, { id }) =>
      sellingDays(book).find((known) => nameKey(known.id) === nameKey(id))?.isUndone ?? true,
    done: (id) => `Undone: ${id}. The bars are back in stock.`,
  },
  isInBook: (book, { id }) => salesOfDay(book, id).length > 0,
  words: {
    written: 'Written to LedgerLines and Sales.',
    standing: 'These sales are in the workbook. They are there once.',
    notKept: 'These sales are not kept if the pane is closed: no room.',
  },
};

/** What recording the draft's sales would write: in words for the preview, and as rows. */
export interface SalesToRecord extends SalesPosting {
  readonly change: Change;
  readonly questions: readonly Question[];
}

/** Works out what recording the draft's sales would write, or says why it can't be. */
export const salesPosting = (
  { book, names }: Ready,
  draft: SellDraft,
  who: Who,
): Result<SalesToRecord> =>
  andThen(dayOfDraft(book, draft, who), (sold) =>
    andThen(postSales(book, sold, who.today), (posting) =>
      andThen(changeForSales(posting, names), (change) =>
        answer({ ...posting, change, questions: fairQuestion(book, sold) }),
      ),
    ),
  );

/** A fair chosen for another day than its own: one of the two is more often a slip. */
function fairQuestion(book: Book, { fair, soldOn }: SellingDay): Question[] {
  const opens = book.fairs.get(nameKey(fair))?.opens;
  if (opens === undefined || Math.floor(opens) === Math.floor(soldOn)) return [];
  return [
    {
      key: `fair ${fair} ${String(soldOn)}`,
      sentence: `${fair} opens on ${day(opens)}, and the date sold is ${day(soldOn)}.`,
      yes: `These bars were sold at ${fair} on ${day(soldOn)}`,
    },
  ];
}

/** The lines in Sales of one selling day, those that take others back included. */
export const salesOfDay = (book: Book, id: string): Book['sales'] =>
  book.sales.filter(({ sale }) => nameKey(sale).startsWith(`${nameKey(id)}.`));

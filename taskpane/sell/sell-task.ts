import type { Book } from '../../src/domain/book/book.ts';
import { nameKey } from '../../src/domain/kernel/names.ts';
import { andThen, answer, type Result } from '../../src/domain/kernel/result.ts';
import { postSales } from '../../src/domain/ledger/post-sales.ts';
import type { SalesPosting } from '../../src/domain/ledger/sale.ts';
import { undoSales } from '../../src/domain/ledger/undo-sales.ts';
import { changeForSales } from '../../src/workbook/change.ts';
import type { Change } from '../../src/workbook/port.ts';
import type { Ready } from '../task/session.ts';
import { taskId } from '../task/task-id.ts';
import type { TaskKind, Who } from '../task/task-kind.ts';
import { dayOfDraft } from './day-of-draft.ts';
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
    andThen(salesPosting(state, draft, who), ({ change }) => answer(change)),
  undo: {
    change: ({ book, names }, id, { today, by }) =>
      andThen(undoSales(book, id, today, by), (posting) => changeForSales(posting, names)),
    done: (id) => `Undone: ${id}. The bars are back in stock.`,
  },
  isInBook: (book, { id }) => salesOfDay(book, id).length > 0,
  words: {
    written: 'Written to Moves and Sales.',
    standing: 'These sales are in the workbook. They are there once.',
    notKept: 'These sales are not kept if the pane is closed: no room.',
  },
};

/** What recording the draft's sales would write: in words for the preview, and as rows. */
export interface SalesToRecord extends SalesPosting {
  readonly change: Change;
}

/** Works out what recording the draft's sales would write, or says why it can't be. */
export const salesPosting = (
  { book, names }: Ready,
  draft: SellDraft,
  who: Who,
): Result<SalesToRecord> =>
  andThen(dayOfDraft(book, draft, who), (day) =>
    andThen(postSales(book, day, who.today), (posting) =>
      andThen(changeForSales(posting, names), (change) => answer({ ...posting, change })),
    ),
  );

/** The lines in Sales of one selling day, those that take others back included. */
export const salesOfDay = (book: Book, id: string): Book['sales'] =>
  book.sales.filter(({ sale }) => nameKey(sale).startsWith(`${nameKey(id)}.`));

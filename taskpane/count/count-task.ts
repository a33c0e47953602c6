import type { Book, Move } from '../../src/domain/book/book.ts';
import { nameKey } from '../../src/domain/kernel/names.ts';
import { andThen, answer, type Result, wrong } from '../../src/domain/kernel/result.ts';
import { postStocktake, type StocktakePosting } from '../../src/domain/ledger/stocktake.ts';
import { changeForStocktake } from '../../src/workbook/change.ts';
import type { Change } from '../../src/workbook/port.ts';
import type { Ready } from '../task/session.ts';
import { taskId } from '../task/task-id.ts';
import type { TaskKind, Who } from '../task/task-kind.ts';
import { type CountDraft, keepCountDraft, newCountDraft, restoreCountDraft } from './draft.ts';
import { countsOf } from './shelf-items.ts';

/** Counting the shelf and bringing the ledger to it. */
export const countTask: TaskKind<CountDraft> = {
  key: 'count draft',
  fresh: (port) => newCountDraft(taskId('C', port.today(), port.newToken())),
  keep: keepCountDraft,
  restore: restoreCountDraft,
  change: (draft, told) => ({ ...draft, ...told }),
  changeToRecord: (state, draft, who) =>
    andThen(countPosting(state, draft, who), ({ change, differences }) =>
      differences.length === 0
        ? wrong('Everything counted agrees with the ledger, so there is nothing to write.')
        : answer(change),
    ),
  // Counting again puts a wrong count right.
  undo: undefined,
  isInBook: (book, { id }) => movesOfCount(book, id).length > 0,
  words: {
    written: 'Written to LedgerLines.',
    standing: 'This count is in the workbook. It is there once.',
    notKept: 'This count is not kept if the pane is closed: no room.',
  },
};

/** What recording a count would write: in words for the preview, and as rows. */
export interface CountToRecord extends StocktakePosting {
  readonly change: Change;
  /** How many items were counted, those that agree included. */
  readonly counted: number;
}

/** Works out where the shelf and the ledger differ, or says why it can't be. */
export const countPosting = (
  { book, names }: Ready,
  draft: CountDraft,
  { today, by }: Who,
): Result<CountToRecord> =>
  andThen(countsOf(book, draft), (counts) => {
    if (counts.length === 0) return wrong('Nothing is counted yet. Type what is on the shelf.');
    return andThen(postStocktake(book, { id: draft.id, day: today, counts, by }), (posting) =>
      andThen(changeForStocktake(posting, names), (change) =>
        answer({ ...posting, change, counted: counts.length }),
      ),
    );
  });

/** The moves that one count wrote. */
export const movesOfCount = (book: Book, id: string): Move[] =>
  book.ledger.moves.filter(({ entry }) => nameKey(entry).startsWith(`${nameKey(id)}.`));

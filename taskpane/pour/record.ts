import type { Book } from '../../src/domain/book/book.ts';
import type { Day } from '../../src/domain/kernel/day.ts';
import { andThen, type Result, wrong } from '../../src/domain/kernel/result.ts';
import { postBatch } from '../../src/domain/ledger/post-batch.ts';
import type { PostBatchAnswer } from '../../src/domain/ledger/settle.ts';
import type { Shortage } from '../../src/domain/ledger/take-stock.ts';
import { undoBatch } from '../../src/domain/ledger/undo-batch.ts';
import { changeForBatch, changeForUndo } from '../../src/workbook/change.ts';
import type { Change } from '../../src/workbook/port.ts';
import type { Draft } from './draft.ts';
import { planOfDraft, type PlannedPour, pourAsPlanned, pourOfDraft } from './pour-of-draft.ts';
import { keptAnswer } from '../task/kept-answer.ts';
import type { Ready } from '../task/session.ts';
import type { Who } from '../task/task-kind.ts';

/** What recording the draft's pour would write, and the maker's view of it; worked out once for the same draft. */
export const postingOf = (
  { book }: Ready,
  draft: Draft,
  { today, by }: Who,
): Result<PostBatchAnswer> => postingFor(book, draft, today, by);

const postingFor = keptAnswer((book: Book, draft: Draft, today: Day, by: string) =>
  post(book, draft, today, by),
);

const post = (book: Book, draft: Draft, today: Day, by: string): Result<PostBatchAnswer> =>
  andThen(planOfDraft(book, draft, today), (planned) =>
    andThen(pourOfDraft(draft, planned, by), (pour) => postBatch(book, pour, today)),
  );

/** What recording the pour just as planned would write, before anything melts. */
export const postingAsPlanned = keptAnswer(
  (book: Book, batch: string, planned: PlannedPour, today: Day) =>
    postBatch(book, pourAsPlanned(batch, planned), today),
);

/** All that the pour's stock is short of, whatever the maker says of the counts. */
export function shortagesOf(state: Ready, draft: Draft, who: Who): readonly Shortage[] {
  const posting = postingOf(state, draft, who);
  if (posting.ok) return posting.value.lacking;
  // A count that can't be valued must not hide the line on which it is taken back.
  return draft.countIsOff.length === 0 ? [] : withoutCounts(state.book, draft, who.today, who.by);
}

const withoutCounts = keptAnswer(
  (book: Book, draft: Draft, today: Day, by: string): readonly Shortage[] => {
    const posting = post(book, { ...draft, countIsOff: [] }, today, by);
    return posting.ok ? posting.value.lacking : [];
  },
);

/** The change that recording writes; fails while anything is short or unclear. */
export function changeToRecord(state: Ready, draft: Draft, who: Who): Result<Change> {
  return andThen(postingOf(state, draft, who), (posting) =>
    posting.kind === 'short'
      ? wrong('Stock is short now. See what is missing above.')
      : changeForBatch(posting.posting, state.names),
  );
}

/** The change that undoing a batch writes, or why it can't be undone. */
export function changeToUndo(state: Ready, batch: string, who: Who): Result<Change> {
  return andThen(undoBatch(state.book, batch, who.today, who.by), (posting) =>
    changeForUndo(posting, state.names),
  );
}

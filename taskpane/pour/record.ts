import { andThen, type Result, wrong } from '../../src/domain/kernel/result.ts';
import { postBatch, type PostBatchAnswer } from '../../src/domain/ledger/post-batch.ts';
import type { Shortage } from '../../src/domain/ledger/take-stock.ts';
import { undoBatch } from '../../src/domain/ledger/undo-batch.ts';
import { changeForBatch, changeForUndo } from '../../src/workbook/change.ts';
import type { Change } from '../../src/workbook/port.ts';
import type { Draft } from './draft.ts';
import { planOfDraft, pourOfDraft } from './pour-of-draft.ts';
import type { Ready } from '../task/session.ts';
import type { Who } from '../task/task-kind.ts';

/** What recording the draft's pour would write, and the maker's view of it. */
export function postingOf(state: Ready, draft: Draft, who: Who): Result<PostBatchAnswer> {
  return andThen(planOfDraft(state.book, draft, who.today), (planned) =>
    andThen(pourOfDraft(draft, planned, who.by), (pour) => postBatch(state.book, pour, who.today)),
  );
}

/** All that the pour's stock is short of, whatever the maker says of the counts. */
export function shortagesOf(state: Ready, draft: Draft, who: Who): readonly Shortage[] {
  const posting = postingOf(state, { ...draft, countIsOff: [] }, who);
  return posting.ok && posting.value.kind === 'short' ? posting.value.shortages : [];
}

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

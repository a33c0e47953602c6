import type { Day } from '../src/domain/kernel/day.ts';
import { andThen, type Result, wrong } from '../src/domain/kernel/result.ts';
import { postBatch, type PostBatchAnswer } from '../src/domain/ledger/post-batch.ts';
import type { Shortage } from '../src/domain/ledger/take-stock.ts';
import { undoBatch } from '../src/domain/ledger/undo-batch.ts';
import { changeForBatch, changeForUndo } from '../src/workbook/change.ts';
import type { Change } from '../src/workbook/port.ts';
import type { Draft } from './draft.ts';
import { planOfDraft, pourOfDraft } from './pour-of-draft.ts';
import type { BookState, Written } from './session.ts';

type Ready = Extract<BookState, { kind: 'ready' }>;

/** What recording the draft's pour would write, and the maker's view of it. */
export function postingOf(
  state: Ready,
  draft: Draft,
  today: Day,
  by: string,
): Result<PostBatchAnswer> {
  return andThen(planOfDraft(state.book, draft, today), (planned) =>
    andThen(pourOfDraft(draft, planned, by), (pour) => postBatch(state.book, pour, today)),
  );
}

/** All that the pour's stock is short of, whatever the maker says of the counts. */
export function shortagesOf(
  state: Ready,
  draft: Draft,
  today: Day,
  by: string,
): readonly Shortage[] {
  const posting = postingOf(state, { ...draft, countIsOff: [] }, today, by);
  return posting.ok && posting.value.kind === 'short' ? posting.value.shortages : [];
}

/** The change that recording writes; fails while anything is short or unclear. */
export function changeToRecord(state: Ready, draft: Draft, today: Day, by: string): Result<Change> {
  return andThen(postingOf(state, draft, today, by), (posting) =>
    posting.kind === 'short'
      ? wrong('Stock is short now. See what is missing above.')
      : changeForBatch(posting.posting, state.names),
  );
}

/** The change that undoing a batch writes, or why it can't be undone. */
export function changeToUndo(state: Ready, batch: string, today: Day, by: string): Result<Change> {
  return andThen(undoBatch(state.book, batch, today, by), (posting) =>
    changeForUndo(posting, state.names),
  );
}

/** What to tell the maker of a write that did not go through. */
export function sentenceOfWritten(written: Exclude<Written, { kind: 'applied' }>): string {
  switch (written.kind) {
    case 'already there':
      return 'It was in the workbook already, so nothing was written twice.';
    case 'refused':
      return `Nothing was written. ${written.sentence}`;
    case 'unsure':
      return `The workbook broke off: ${written.sentence} Try again: nothing is written twice.`;
  }
}

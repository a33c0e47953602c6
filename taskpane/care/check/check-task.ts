import type { HealthFinding } from '../../../src/domain/health/finding.ts';
import { healthCheck } from '../../../src/domain/health/health-check.ts';
import { andThen, answer, type Result, wrong } from '../../../src/domain/kernel/result.ts';
import { changeForRepair } from '../../../src/workbook/change.ts';
import { keptAnswer } from '../../task/kept-answer.ts';
import type { Ready } from '../../task/session.ts';
import type { TaskKind, Who } from '../../task/task-kind.ts';
import { type CheckDraft, keepCheckDraft, newCheckDraft, restoreCheckDraft } from './draft.ts';

/** Checking the book and mending what lines can mend, one finding at a time. */
export const checkTask: TaskKind<CheckDraft> = {
  key: 'check draft',
  fresh: newCheckDraft,
  keep: keepCheckDraft,
  restore: restoreCheckDraft,
  change: (draft, told) => ({ ...draft, ...told }),
  changeToRecord: (state, draft, who) =>
    andThen(chosenFinding(findingsOf(state, who), draft), ({ repair }) =>
      repair === undefined
        ? wrong('There are no lines to add.')
        : changeForRepair(repair, state.names),
    ),
  // A repair that was wrong shows as a finding of its own, or is put right by a count.
  undo: undefined,
  // What is mended shows as a finding that is gone; only its own lines tell who mended it.
  isInBook: () => false,
  words: {
    written: 'The lines were added, and the book was read and checked again.',
    standing: 'These lines are in the workbook. They are there once.',
    notKept: 'What you were mending is not kept if the pane is closed: no room.',
  },
};

/** All that the check finds in the book as it is now. */
export const findingsOf = ({ book }: Ready, { today, by }: Who): readonly HealthFinding[] =>
  findingsFor(book, today, by);

/** Kept, since it goes through the whole ledger. */
const findingsFor = keptAnswer(healthCheck);

/** Tells a finding from all others; its words are only made for those that are looked at. */
export const keyOf = ({ kind, about }: HealthFinding): string => `${kind} ${about}`;

/** The finding being mended, while it is still there. */
export function chosenFinding(
  findings: readonly HealthFinding[],
  { finding }: CheckDraft,
): Result<HealthFinding> {
  const chosen = findings.find((known) => keyOf(known) === finding);
  return chosen?.repair === undefined
    ? wrong('This is in order now: nothing to write.')
    : answer(chosen);
}

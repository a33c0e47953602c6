import type { Book } from '../../../src/domain/book/book.ts';
import { andThen, answer, type Result, wrong } from '../../../src/domain/kernel/result.ts';
import { findTables } from '../../../src/workbook/find-tables.ts';
import { compareCopies } from '../../../src/workbook/sharing/compare-copies.ts';
import { mergeInto, type MergePlan } from '../../../src/workbook/sharing/merge-into.ts';
import { repeatsOf } from '../../../src/workbook/sharing/repeats.ts';
import type { TableData } from '../../../src/workbook/port.ts';
import { tables } from '../../../src/workbook/schema.ts';
import { withChange } from '../../../src/workbook/write/with-change.ts';
import { readTablesOf } from '../../read-workbook.ts';
import { keptAnswer } from '../../task/kept-answer.ts';
import type { Pause } from '../../task/long-work.ts';
import type { Ready } from '../../task/session.ts';
import type { TaskKind } from '../../task/task-kind.ts';
import { keepMergeDraft, type MergeDraft, newMergeDraft, restoreMergeDraft } from './draft.ts';

/** Bringing another copy of the workbook into this one. */
export const mergeTask: TaskKind<MergeDraft> = {
  key: 'merge draft',
  fresh: newMergeDraft,
  keep: keepMergeDraft,
  restore: restoreMergeDraft,
  change: (draft, told) => ({ ...draft, ...told }),
  changeToRecord: (state, draft) =>
    andThen(planOf(state, draft), (plan) => {
      const open = stillToChoose(plan);
      if (open !== undefined) return wrong(open);
      return hasNothingToWrite(plan) ? wrong(nothingToWrite(plan)) : answer(plan.change);
    }),
  // What was brought in is taken back where it was made: a batch in Pour, a sale in Sell.
  undo: undefined,
  isInBook: () => false,
  words: {
    written: 'All of it was written, and the book was read again.',
    standing: 'All that was brought in is in the workbook. It is there once.',
    notKept:
      'If the pane is closed now, choose the file again: there is no room to keep what is written.',
  },
};

type Chosen = Pick<MergeDraft, 'copy' | 'chosen'>;

/** What bringing the copy in writes, as far as the two together make a sound book. */
export function planOf({ tables, book }: Ready, { copy, chosen }: Chosen): Result<MergePlan> {
  if (copy === undefined) return wrong('Choose the other copy first.');
  if (findTables(copy).size === 0) {
    return wrong(
      'The file chosen has none of the tables of this workbook, so it is no copy of it. Choose another file.',
    );
  }
  // Of two lines with one id only one could be brought in, and the other would be lost.
  const [twice] = repeatsIn(copy);
  if (twice !== undefined) {
    return wrong(
      `In the other copy two lines of ${twice.table} share the id ${twice.id}. Open that copy by itself, give each its own id there, then choose it again.`,
    );
  }
  const plan = planFor(tables, copy, chosen);
  const together = readTogether(tables, plan, book);
  if (together.kind === 'ready') return answer(plan);
  if (together.kind === 'refused') return wrong(together.sentence);
  return wrong(
    `The two copies together can't be read as one book, so nothing is written. Mend this in one of them first: ${together.findings
      .slice(0, MOST_SHOWN)
      .map(({ sentence }) => sentence)
      .join(' ')}`,
  );
}

// Each part is kept, since it goes through the whole ledger of one copy or of both.
const repeatsIn = keptAnswer(repeatsOf);
const compared = keptAnswer(compareCopies);
const planFor = keptAnswer(
  (tables: readonly TableData[], copy: readonly TableData[], chosen: MergeDraft['chosen']) =>
    mergeInto(tables, copy, chosen, compared(tables, copy)),
);
const readTogether = keptAnswer(
  (tables: readonly TableData[], { change }: MergePlan, book: Book) => {
    const { plan, tables: together } = withChange(tables, change);
    return plan.kind === 'refused' ? plan : readTablesOf(together, book);
  },
);

/** The way to work the plan out in pieces: afterwards `planOf` answers at once. */
export const preparer =
  (state: Ready) =>
  async (chosen: Chosen, pause: Pause): Promise<void> => {
    const { copy } = chosen;
    if (copy === undefined) return;
    await pause('Looking through the other copy…', 0.5);
    repeatsIn(copy);
    await pause('Comparing the two copies…', 0.6);
    compared(state.tables, copy);
    await pause('Reading the two as one book…', 0.8);
    planOf(state, chosen);
    await pause('Showing what comes in…', 1);
  };

const MOST_SHOWN = 5;

/** Why nothing is written: said to be whole only where nothing of the other copy stays out. */
export const nothingToWrite = ({ differences, leftOut }: MergePlan): string =>
  differences.length + leftOut.length === 0
    ? 'This workbook holds all that the other copy has.'
    : 'There is nothing to bring in; what stays in the other copy alone is said below.';

/** What to do before anything is written, where a difference waits to be chosen. */
export function stillToChoose({ differences }: MergePlan): string | undefined {
  const open = differences.filter(({ isOpen }) => isOpen);
  if (open.length === 0) return undefined;
  const which = open.map(({ kind, id }) => `${id} in ${tables[kind].name}`);
  return `Choose which to keep of ${namedFirst(which, MOST_SHOWN)}. Nothing is written before.`;
}

/** The first few of many names, and how many more there are. */
export function namedFirst(names: readonly string[], most: number): string {
  const more = names.length - most;
  const shown = names.slice(0, most).join(', ');
  return more > 0 ? `${shown} and ${String(more)} more` : shown;
}

export const hasNothingToWrite = ({ change }: MergePlan): boolean =>
  change.appends.length + change.updates.length === 0;

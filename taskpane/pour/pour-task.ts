import { isUndone } from '../../src/domain/stock/batch-moves.ts';
import { batchCode } from '../../src/domain/book/batch-code.ts';
import { readDay } from '../../src/domain/kernel/day.ts';
import { nameKey } from '../../src/domain/kernel/names.ts';
import type { TaskKind } from '../task/task-kind.ts';
import { changeDraft, type Draft, keepDraft, newDraft, restoreDraft } from './draft.ts';
import { changeToRecord, changeToUndo } from './record.ts';

/** Recording a pour: weigh out, say what came out, look over, post; and taking it back. */
export const pourTask: TaskKind<Draft> = {
  key: 'pour draft',
  fresh(port) {
    const today = port.today();
    return newDraft(batchCode(readDay(today) ?? 0, port.newToken()), today);
  },
  keep: keepDraft,
  restore: restoreDraft,
  change: changeDraft,
  changeToRecord,
  undo: {
    change: changeToUndo,
    isUndone: (book, draft) => {
      const batch = book.batches.get(nameKey(draft.batch));
      return batch === undefined || isUndone(book, batch);
    },
    done: (batch) => `Undone: ${batch}. Stock is what it was before.`,
  },
  isInBook: (book, { batch }) => book.batches.has(nameKey(batch)),
  words: {
    written: 'Written to LedgerLines and Batches.',
    standing: 'This pour is in the workbook. It is there once.',
    notKept: 'This pour is not kept if the pane is closed: no room.',
  },
};

import type { Book, Lot } from '../../src/domain/book/book.ts';
import { itemOfMaterial } from '../../src/domain/book/find.ts';
import { readDay } from '../../src/domain/kernel/day.ts';
import { exact, sum } from '../../src/domain/kernel/exact.ts';
import { nameKey } from '../../src/domain/kernel/names.ts';
import { andThen, answer, type Result, wrong } from '../../src/domain/kernel/result.ts';
import { entryId, type StockChange } from '../../src/domain/ledger/posting.ts';
import {
  type DeliveredLine,
  type NewLot,
  receiveDelivery,
} from '../../src/domain/ledger/receive.ts';
import { undoDelivery } from '../../src/domain/ledger/undo-delivery.ts';
import { onHand } from '../../src/domain/stock/on-hand.ts';
import { changeForDelivery, changeForUndoneLots } from '../../src/workbook/change.ts';
import type { Change } from '../../src/workbook/port.ts';
import { ASKED_FIRST, type Question, unanswered } from '../task/question.ts';
import type { Ready } from '../task/session.ts';
import { taskId } from '../task/task-id.ts';
import type { TaskKind, Who } from '../task/task-kind.ts';
import { deliveryOfDraft, linesOfDraft } from './delivery-of-draft.ts';
import { questionsOf } from './questions.ts';
import { lotNames, lotsIn } from './recent-deliveries.ts';
import {
  keepReceiveDraft,
  newReceiveDraft,
  type ReceiveDraft,
  restoreReceiveDraft,
} from './draft.ts';

/** Recording a delivery as lots, and taking it back. */
export const receiveTask: TaskKind<ReceiveDraft> = {
  key: 'receive draft',
  fresh(port) {
    const today = port.today();
    return newReceiveDraft(taskId('R', today, port.newToken()), today);
  },
  keep: keepReceiveDraft,
  restore: restoreReceiveDraft,
  change: (draft, told) => ({ ...draft, ...told }),
  changeToRecord: (state, draft, who) =>
    andThen(deliveryPosting(state, draft, who), ({ change, questions }) =>
      unanswered(questions, draft).length === 0 ? answer(change) : wrong(ASKED_FIRST),
    ),
  undo: {
    change: ({ book, names }, target) =>
      andThen(undoDelivery(book, lotsIn(target)), (lots) => changeForUndoneLots(lots, names)),
    isUndone: (book, draft) => lotsOfDelivery(book, draft).length === 0,
    done: (target) =>
      `Undone: ${lotNames(lotsIn(target))}. Stock and costs are as if it never came.`,
  },
  isInBook: (book, draft) => lotsOfDelivery(book, draft).length > 0,
  words: {
    written: 'Written to Lots.',
    standing: 'This delivery is in the workbook. It is there once.',
    notKept: 'This delivery is not kept if the pane is closed: no room.',
  },
};

/** What recording a delivery would write: in words for the preview, and as rows. */
export interface DeliveryToRecord {
  readonly lots: readonly NewLot[];
  readonly changes: readonly StockChange[];
  readonly questions: readonly Question[];
  readonly change: Change;
}

/** Works out the lots of a delivery, freight shared out, or says why it can't be. */
export const deliveryPosting = (
  { book, names }: Ready,
  draft: ReceiveDraft,
  { today }: Who,
): Result<DeliveryToRecord> =>
  andThen(deliveryOfDraft(book, draft, today), (delivery) =>
    andThen(receiveDelivery(book, delivery), (lots) =>
      andThen(changeForDelivery(lots, names), (change) =>
        answer({
          lots,
          change,
          changes: stockOf(book, lots, today),
          questions: questionsOf(book, lots),
        }),
      ),
    ),
  );

function stockOf(book: Book, lots: readonly NewLot[], today: number): StockChange[] {
  const materials = [...new Set(lots.map(({ material }) => material))];
  return materials.map((material) => {
    const item = itemOfMaterial(material);
    const before = onHand(book, item, today);
    const came = lots.filter((lot) => lot.material === material).map(({ quantity }) => quantity);
    return { item, before, after: before.plus(sum(came)) };
  });
}

/** The lots of a delivery where all of them stand in the workbook just as the draft tells them; else none. */
export function lotsOfDelivery(book: Book, draft: ReceiveDraft): Lot[] {
  const lines = linesOfDraft(book, draft);
  if (!lines.ok) return [];
  const lots = lines.value.flatMap((line, index) =>
    lotsNamed(book, draft, line, index).filter(
      ({ material, received, quantity }) =>
        material === line.material &&
        received === readDay(draft.received) &&
        exact(quantity).eq(line.quantity),
    ),
  );
  return lots.length === lines.value.length ? lots : [];
}

/** Whether a lot of the delivery stands in the workbook, whatever it says. */
export function someStand(book: Book, draft: ReceiveDraft): boolean {
  const lines = linesOfDraft(book, draft);
  return !lines.ok || lines.value.some((line, at) => lotsNamed(book, draft, line, at).length > 0);
}

function lotsNamed(book: Book, { id }: ReceiveDraft, line: DeliveredLine, index: number): Lot[] {
  const name = line.lot === '' ? entryId(id, index + 1) : line.lot;
  return book.lots.filter(({ lot }) => nameKey(lot) === nameKey(name));
}

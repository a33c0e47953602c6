import { nothing } from 'lit';
import { itemOfMaterial } from '../../../src/domain/book/find.ts';
import { type Done, DoneFrame } from '../../parts/done-frame.ts';
import { stockNow } from '../../parts/stock-now.ts';
import type { ReceiveDraft } from '../draft.ts';
import { lotsOfDelivery, someStand } from '../receive-task.ts';
import { lotNames, targetOf, UNDO_MEANS } from '../recent-deliveries.ts';

/** Last step of a delivery: what is in stock now, and the way to take it back. */
export class ReceiveDoneStep extends DoneFrame {
  static override properties = { draft: { attribute: false } };

  declare draft: ReceiveDraft;

  protected override done(): Done {
    const { book, draft, target, today } = this;
    const lots = lotsOfDelivery(book, draft);
    const another = 'Record another delivery';
    if (lots.length === 0 && !someStand(book, draft)) {
      return {
        heading: 'Undone',
        about: `No line of delivery ${target} is in Lots any more.`,
        another,
        content: nothing,
        undo: undefined,
      };
    }
    if (lots.length === 0) {
      return {
        heading: 'Not in the workbook',
        about: `The lines of delivery ${target} in Lots are no longer as they were recorded.`,
        another,
        content: nothing,
        undo: undefined,
      };
    }
    const items = lots.map(({ material }) => itemOfMaterial(material));
    return {
      heading: 'Recorded',
      about: `Delivery ${target}`,
      another,
      content: stockNow(book, items, today),
      undo: `delivery ${target}, ${lotNames(lots.map(({ lot }) => lot))}`,
      undoTarget: targetOf(lots),
      undoMeans: UNDO_MEANS,
    };
  }
}
customElements.define('pour-receive-done', ReceiveDoneStep);

import { type Done, DoneFrame } from '../../parts/done-frame.ts';
import { stockNow } from '../../parts/stock-now.ts';
import { movesOfCount } from '../count-task.ts';

/** Last step of a count: what the ledger holds now. A wrong count is put right by another. */
export class CountDoneStep extends DoneFrame {
  protected override done(): Done {
    const items = movesOfCount(this.book, this.target).map(({ item }) => item);
    return {
      heading: items.length === 0 ? 'Not in the workbook' : 'Recorded',
      about: `Count ${this.target}`,
      another: 'Count again',
      content: stockNow(this.book, items, this.today),
      undo: undefined,
    };
  }
}
customElements.define('pour-count-done', CountDoneStep);

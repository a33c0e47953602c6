import { SHAPED_AHEAD } from '../recent-batches.ts';
import { html, nothing } from 'lit';
import type { Batch, Move } from '../../../src/domain/book/book.ts';
import { itemOfBars } from '../../../src/domain/book/find.ts';
import { count } from '../../../src/domain/kernel/count.ts';
import { exact } from '../../../src/domain/kernel/exact.ts';
import { nameKey } from '../../../src/domain/kernel/names.ts';
import { onHand } from '../../../src/domain/stock/on-hand.ts';
import { day, ledgerAmount, moneyText, plain } from '../../format.ts';
import { type Done, DoneFrame } from '../../parts/done-frame.ts';
import { isUndone } from '../../../src/domain/stock/batch-moves.ts';

/** Last step of a pour: what changed. */
export class DoneStep extends DoneFrame {
  protected override done(): Done {
    const batch = this.book.batches.get(nameKey(this.target));
    const another = 'Record another';
    if (batch === undefined) {
      return {
        heading: 'Not in the workbook',
        about: `Batch ${this.target} is no longer in Batches.`,
        another,
        content: nothing,
        undo: undefined,
      };
    }
    const wasUndone = isUndone(this.book, batch);
    return {
      heading: wasUndone ? 'Undone' : 'Recorded',
      about: `${batch.design?.name ?? SHAPED_AHEAD}, ${batch.batch}`,
      another,
      content: wasUndone ? nothing : this.changes(batch),
      undo: wasUndone ? undefined : `batch ${batch.batch}`,
    };
  }

  private goodBars({ design, good = 0 }: Batch) {
    if (design === undefined) return nothing;
    const bars = onHand(this.book, itemOfBars(design), this.today);
    return html`<dt>Good bars</dt>
      <dd>${good}, now ${plain(bars)} in stock</dd>`;
  }

  private changes(batch: Batch) {
    const { currency } = this.book.settings;
    const moves = this.book.ledger.moves.filter(
      (move) => nameKey(move.batch) === nameKey(batch.batch),
    );
    const back = moves.filter(({ reason }) => reason === 'left over' || reason === 'spare');
    const used = moves.filter(({ reason }) => reason === 'used').length;
    return html`<dl>
        ${this.goodBars(batch)}
        ${
          batch.costPerBar === undefined
            ? nothing
            : html`<dt>Cost per bar</dt>
                <dd>${moneyText(exact(batch.costPerBar), currency)}</dd>`
        }
        ${
          batch.readyOn === undefined
            ? nothing
            : html`<dt>Ready on</dt>
                <dd>${day(batch.readyOn)}</dd>`
        }
      </dl>
      ${back.length === 0 ? nothing : this.returned(back)}
      <p class="quiet">${count(used, 'line')} taken from stock.</p>`;
  }

  private returned(moves: readonly Move[]) {
    return html`<table>
      <caption>
        Back in stock
      </caption>
      <tbody>
        ${moves.map(
          ({ item, quantity }) =>
            html`<tr>
              <th scope="row">${item.name}</th>
              <td class="figure">${ledgerAmount(exact(quantity), item.unit)}</td>
            </tr>`,
        )}
      </tbody>
    </table>`;
  }
}
customElements.define('pour-done', DoneStep);

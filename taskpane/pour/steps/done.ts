import '@fluentui/web-components/button.js';
import { html, LitElement, nothing } from 'lit';
import type { Book, Move } from '../../../src/domain/book/book.ts';
import { itemOfBars } from '../../../src/domain/book/find.ts';
import { count } from '../../../src/domain/kernel/count.ts';
import type { Day } from '../../../src/domain/kernel/day.ts';
import { exact } from '../../../src/domain/kernel/exact.ts';
import { nameKey } from '../../../src/domain/kernel/names.ts';
import { onHand } from '../../../src/domain/stock/on-hand.ts';
import { tell } from '../events.ts';
import { day, ledgerAmount, money, plain } from '../../format.ts';
import { cardLooks, looks, noticeLooks } from '../../looks.ts';
import { liveNotice, type Notice } from '../../parts/notice.ts';
import { isUndoneBatch } from '../recent-batches.ts';
import '../../parts/undo-button.ts';

/** Last step: what changed, read back from the workbook itself. */
export class DoneStep extends LitElement {
  static override styles = [looks, cardLooks, noticeLooks];
  static override properties = {
    batch: {},
    book: { attribute: false },
    today: { attribute: false },
    notice: { attribute: false },
    isBusy: { attribute: false },
  };

  /** Id of the batch. */
  declare batch: string;
  declare book: Book;
  declare today: Day;
  declare notice: Notice | undefined;
  declare isBusy: boolean;

  override render() {
    const batch = this.book.batches.get(nameKey(this.batch));
    const isUndone = batch !== undefined && isUndoneBatch(batch);
    const title = batch === undefined ? 'Not in the workbook' : isUndone ? 'Undone' : 'Recorded';
    return html`<div class="stack">
      <div>
        <h2 tabindex="-1">${title}</h2>
        <p class="quiet">
          ${
            batch === undefined
              ? `Batch ${this.batch} is no longer in Batches.`
              : `${batch.design.name}, ${batch.batch}`
          }
        </p>
      </div>
      ${liveNotice(this.notice)} ${batch === undefined || isUndone ? nothing : this.changes(batch)}
      <div class="actions">
        <fluent-button
          appearance="primary"
          id="another"
          @click=${() => {
            tell(this, 'task-another', undefined);
          }}
          >Record another</fluent-button
        >
      </div>
      ${
        batch === undefined || isUndone
          ? nothing
          : html`<pour-undo-button
              target=${batch.batch}
              name="batch ${batch.batch}"
              ?isBusy=${this.isBusy}
            ></pour-undo-button>`
      }
    </div>`;
  }

  private changes(batch: NonNullable<ReturnType<Book['batches']['get']>>) {
    const { currency } = this.book.settings;
    const bars = onHand(this.book, itemOfBars(batch.design), this.today);
    const moves = this.book.ledger.moves.filter(
      (move) => nameKey(move.batch) === nameKey(batch.batch),
    );
    const back = moves.filter(({ reason }) => reason === 'left over' || reason === 'spare');
    const used = moves.filter(({ reason }) => reason === 'used').length;
    return html`<dl>
        <dt>Good bars</dt>
        <dd>${batch.good ?? 0}, now ${plain(bars)} in stock</dd>
        ${
          batch.costPerBar === undefined
            ? nothing
            : html`<dt>Cost per bar</dt>
                <dd>${money(exact(batch.costPerBar), currency)}</dd>`
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

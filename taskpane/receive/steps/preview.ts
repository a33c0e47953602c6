import { html, LitElement, nothing, type TemplateResult } from 'lit';
import type { Book } from '../../../src/domain/book/book.ts';
import { itemOfMaterial } from '../../../src/domain/book/find.ts';
import { count } from '../../../src/domain/kernel/count.ts';
import type { Exact } from '../../../src/domain/kernel/exact.ts';
import type { Result } from '../../../src/domain/kernel/result.ts';
import type { NewLot } from '../../../src/domain/ledger/receive.ts';
import { stockAt } from '../../../src/domain/stock/valuation.ts';
import { day, ledgerAmount, money, unitMoney } from '../../format.ts';
import { cardLooks, looks, noticeLooks } from '../../looks.ts';
import { stockTable } from '../../parts/move-table.ts';
import { liveNotice, type Notice, noticeBar } from '../../parts/notice.ts';
import { halfWrittenNotice, recordActions } from '../../parts/record-actions.ts';
import type { ReceiveDraft } from '../draft.ts';
import { tell } from '../events.ts';
import type { DeliveryToRecord } from '../receive-task.ts';

/** Second step of a delivery: the lots, what each landed at, and that there is no undo. */
export class ReceivePreviewStep extends LitElement {
  static override styles = [looks, cardLooks, noticeLooks];
  static override properties = {
    book: { attribute: false },
    draft: { attribute: false },
    posting: { attribute: false },
    notice: { attribute: false },
    isBusy: { attribute: false },
    isHalfWritten: { attribute: false },
  };

  declare book: Book;
  declare draft: ReceiveDraft;
  declare posting: Result<DeliveryToRecord>;
  declare notice: Notice | undefined;
  declare isBusy: boolean;
  declare isHalfWritten: boolean;

  override render(): TemplateResult {
    return html`<div class="stack">
      <h2 tabindex="-1">Look it over</h2>
      ${this.isHalfWritten ? halfWrittenNotice(this.draft.id) : this.body()}
      ${liveNotice(this.notice)}
      ${recordActions({
        label: 'Record this delivery',
        canRecord: this.posting.ok,
        isBusy: this.isBusy,
        isHalfWritten: this.isHalfWritten,
        onRecord: () => {
          tell(this, 'task-record', undefined);
        },
        onBack: () => {
          tell(this, 'task-step', 'enter');
        },
      })}
    </div>`;
  }

  private body(): TemplateResult {
    if (!this.posting.ok) {
      return html`${noticeBar({ kind: 'bad', text: this.posting.failure.sentence })}`;
    }
    const { lots, changes } = this.posting.value;
    const [first] = lots;
    return html`<div>
        ${this.lotTable(lots)}
        <p class="small quiet">
          Received
          ${first === undefined ? '' : day(first.received)}${
            first === undefined || first.supplier === '' ? '' : ` from ${first.supplier}`
          }.
        </p>
      </div>
      ${stockTable(changes)}
      ${noticeBar({
        kind: 'warn',
        text: 'A delivery can’t be undone here. Afterwards a count puts a wrong quantity right; a wrong price is put right in the Lots table.',
      })}`;
  }

  private lotTable(lots: readonly NewLot[]): TemplateResult {
    const { currency } = this.book.settings;
    return html`<table>
      <caption>
        ${count(lots.length, 'line')} for Lots
      </caption>
      <thead>
        <tr>
          <th scope="col">Material and lot</th>
          <th scope="col">Quantity</th>
          <th scope="col">Paid and freight</th>
        </tr>
      </thead>
      <tbody>
        ${lots.map((lot) => {
          const each = lot.paid.plus(lot.freight).div(lot.quantity);
          return html`<tr>
            <th scope="row">
              ${lot.material.name}<br />
              <span class="small quiet"
                >lot
                ${lot.lot}${
                  lot.bestBefore === undefined ? nothing : `, best before ${day(lot.bestBefore)}`
                }</span
              >
              ${this.comparison(lot, each)}
            </th>
            <td class="figure">${ledgerAmount(lot.quantity, lot.material.unit)}</td>
            <td>
              <span class="figure">${money(lot.paid, currency)}</span>
              ${
                lot.freight.isZero()
                  ? nothing
                  : html`<br /><span class="figure">+ ${money(lot.freight, currency)}</span>`
              }
              <br /><span class="figure small quiet"
                >${unitMoney(each, currency, lot.material.unit)}</span
              >
            </td>
          </tr>`;
        })}
      </tbody>
    </table>`;
  }

  /** What it cost last time, so that a price that crept up, or a slip of packs, is seen. */
  private comparison({ material, received }: NewLot, each: Exact) {
    const last = stockAt(this.book, itemOfMaterial(material), received).newestUnitCost;
    if (last === undefined || last.isZero()) return nothing;
    const isFar = each.gt(last.times(FAR)) || each.times(FAR).lt(last);
    return html`<br /><span class=${isFar ? 'small' : 'small quiet'}
        >${isFar ? 'Far from the last price: check it. ' : ''}Last
        ${unitMoney(last, this.book.settings.currency, material.unit)}.</span
      >`;
  }
}
customElements.define('pour-receive-preview', ReceivePreviewStep);

/** Twice or half of the last price is more often a slip of packs than a change of price. */
const FAR = 2;

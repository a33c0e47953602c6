import { html, nothing, type TemplateResult } from 'lit';
import type { Book } from '../../../src/domain/book/book.ts';
import { itemOfMaterial } from '../../../src/domain/book/find.ts';
import { count } from '../../../src/domain/kernel/count.ts';
import type { Exact } from '../../../src/domain/kernel/exact.ts';
import type { NewLot } from '../../../src/domain/ledger/receive.ts';
import { stockAt } from '../../../src/domain/stock/valuation.ts';
import { day, ledgerAmount, money, unitMoney } from '../../format.ts';
import { stockTable } from '../../parts/ledger-tables.ts';
import { noticeBar } from '../../parts/notice.ts';
import { PreviewFrame, type PreviewWords } from '../../parts/preview-frame.ts';
import type { ReceiveDraft } from '../draft.ts';
import type { DeliveryToRecord } from '../receive-task.ts';

/** Second step of a delivery: the lots, what each landed at, and that there is no undo. */
export class ReceivePreviewStep extends PreviewFrame<DeliveryToRecord> {
  static override properties = { book: { attribute: false }, draft: { attribute: false } };

  declare book: Book;
  declare draft: ReceiveDraft;

  protected override words(): PreviewWords {
    return {
      heading: 'Look it over',
      record: 'Record this delivery',
      id: this.draft.id,
      back: 'enter',
    };
  }

  protected override lines({ lots, changes }: DeliveryToRecord): TemplateResult {
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

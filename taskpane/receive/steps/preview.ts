import { html, nothing, type TemplateResult } from 'lit';
import { asRead } from '../../as-read.ts';
import type { Book } from '../../../src/domain/book/book.ts';
import { count } from '../../../src/domain/kernel/count.ts';
import type { NewLot } from '../../../src/domain/ledger/receive.ts';
import { day, ledgerAmount, moneyText, unitMoney } from '../../format.ts';
import { askFirst } from '../../parts/ask-first.ts';
import { stockTable } from '../../parts/ledger-tables.ts';
import { PreviewFrame, type PreviewWords } from '../../parts/preview-frame.ts';
import { unanswered } from '../../task/question.ts';
import { type ReceiveDraft, tell } from '../draft.ts';
import { landedAt, lastLandedAt } from '../questions.ts';
import type { DeliveryToRecord } from '../receive-task.ts';

/** Second step of a delivery: the lots, what each landed at, and how long it can be undone. */
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

  protected override canRecord({ questions }: DeliveryToRecord): boolean {
    return unanswered(questions, this.draft).length === 0;
  }

  protected override lines({ lots, changes, questions }: DeliveryToRecord): TemplateResult {
    const [first] = lots;
    return html`${askFirst(questions, this.draft, (sure) => {
        tell(this, 'task-told', { sure });
      })}
      <div>
        ${this.lotTable(lots)}
        <p class="small quiet">
          Received
          ${first === undefined ? '' : day(first.received)}${
            first === undefined || first.supplier === '' ? '' : ` from ${first.supplier}`
          }.
        </p>
      </div>
      ${stockTable(changes)}
      <p class="small quiet">
        Undo takes the delivery back until something is used of it; after that a count puts a wrong
        quantity right, and a wrong price is put right in Lots.
      </p>`;
  }

  private lotTable(lots: readonly NewLot[]): TemplateResult {
    const { currency } = this.book.settings;
    return html`<table>
      <caption>
        ${asRead(`${count(lots.length, 'line')} for Lots`)}
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
          const each = landedAt(lot);
          return html`<tr>
            <th scope="row">
              ${lot.material.name}<br />
              <span class="small quiet"
                >lot
                ${lot.lot}${
                  lot.bestBefore === undefined ? nothing : `, best before ${day(lot.bestBefore)}`
                }</span
              >
              ${this.comparison(lot)}
            </th>
            <td class="figure">${ledgerAmount(lot.quantity, lot.material.unit)}</td>
            <td>
              <span class="figure">${moneyText(lot.paid, currency)}</span>
              ${
                lot.freight.isZero()
                  ? nothing
                  : html`<br /><span class="figure">+ ${moneyText(lot.freight, currency)}</span>`
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

  /** What it cost last time, so that a price that crept up is seen; one far from it is asked about. */
  private comparison(lot: NewLot) {
    const last = lastLandedAt(this.book, lot);
    if (last === undefined) return nothing;
    const { currency } = this.book.settings;
    return html`<br /><span class="small quiet"
        >Last ${unitMoney(last, currency, lot.material.unit)}.</span
      >`;
  }
}
customElements.define('pour-receive-preview', ReceivePreviewStep);

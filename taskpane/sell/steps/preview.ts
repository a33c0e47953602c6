import { html, LitElement, type TemplateResult } from 'lit';
import { count } from '../../../src/domain/kernel/count.ts';
import type { Result } from '../../../src/domain/kernel/result.ts';
import { exact } from '../../../src/domain/kernel/exact.ts';
import type { NewSale, SalesPosting } from '../../../src/domain/ledger/sale.ts';
import { day, money } from '../../format.ts';
import { cardLooks, looks, noticeLooks } from '../../looks.ts';
import { moveTable, stockTable } from '../../parts/move-table.ts';
import { liveNotice, type Notice, noticeBar } from '../../parts/notice.ts';
import { halfWrittenNotice, recordActions } from '../../parts/record-actions.ts';
import type { SellDraft } from '../draft.ts';
import { tell } from '../events.ts';

/** Second step of selling: exactly what will be written, or what stands in the way. */
export class SellPreviewStep extends LitElement {
  static override styles = [looks, cardLooks, noticeLooks];
  static override properties = {
    draft: { attribute: false },
    posting: { attribute: false },
    currency: { attribute: false },
    notice: { attribute: false },
    isBusy: { attribute: false },
    isHalfWritten: { attribute: false },
  };

  declare draft: SellDraft;
  declare posting: Result<SalesPosting>;
  declare currency: string;
  declare notice: Notice | undefined;
  declare isBusy: boolean;
  declare isHalfWritten: boolean;

  override render() {
    return html`<div class="stack">
      <h2 tabindex="-1">Look it over</h2>
      ${this.isHalfWritten ? halfWrittenNotice(this.draft.id) : this.body()}
      ${liveNotice(this.notice)}
      ${recordActions({
        label: 'Record these sales',
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
    const { sales, moves, changes } = this.posting.value;
    return html`${saleTable(sales, this.currency)} ${moveTable(moves, this.currency)}
    ${stockTable(changes)}`;
  }
}
customElements.define('pour-sell-preview', SellPreviewStep);

/** The lines to add to Sales, each as it will stand there. */
function saleTable(sales: readonly NewSale[], currency: string): TemplateResult {
  const [first] = sales;
  return html`<div>
    <table>
      <caption>
        ${count(sales.length, 'line')} for Sales
      </caption>
      <thead>
        <tr>
          <th scope="col">Design</th>
          <th scope="col">Bars</th>
          <th scope="col">Price each</th>
          <th scope="col">Fees</th>
        </tr>
      </thead>
      <tbody>
        ${sales.map(
          ({ design, bars, priceEach, fees }) =>
            html`<tr>
              <th scope="row">${design}</th>
              <td class="figure">${exact(bars).toString()}</td>
              <td class="figure">${money(priceEach, currency)}</td>
              <td class="figure">${money(fees, currency)}</td>
            </tr>`,
        )}
      </tbody>
    </table>
    <p class="small quiet">
      Sold on ${first === undefined ? '' : day(first.soldOn)},
      ${first === undefined || first.fair === '' ? 'at no fair' : `at ${first.fair}`}.
    </p>
  </div>`;
}

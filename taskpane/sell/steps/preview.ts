import { html, type TemplateResult } from 'lit';
import { asRead } from '../../as-read.ts';
import { count } from '../../../src/domain/kernel/count.ts';
import { exact } from '../../../src/domain/kernel/exact.ts';
import type { NewSale } from '../../../src/domain/ledger/sale.ts';
import { day, moneyText } from '../../format.ts';
import { askFirst } from '../../parts/ask-first.ts';
import { moveTable, stockTable } from '../../parts/ledger-tables.ts';
import { PreviewFrame, type PreviewWords } from '../../parts/preview-frame.ts';
import { unanswered } from '../../task/question.ts';
import { type SellDraft, tell } from '../draft.ts';
import type { SalesToRecord } from '../sell-task.ts';

/** Second step of selling: exactly what will be written, or what stands in the way. */
export class SellPreviewStep extends PreviewFrame<SalesToRecord> {
  static override properties = { draft: { attribute: false }, currency: { attribute: false } };

  declare draft: SellDraft;
  declare currency: string;

  protected override words(): PreviewWords {
    return {
      heading: 'Look it over',
      record: 'Record these sales',
      id: this.draft.id,
      back: 'enter',
    };
  }

  protected override canRecord({ questions }: SalesToRecord): boolean {
    return unanswered(questions, this.draft).length === 0;
  }

  protected override lines({ sales, moves, changes, questions }: SalesToRecord): TemplateResult {
    return html`${askFirst(questions, this.draft, (sure) => {
      tell(this, 'task-told', { sure });
    })}
    ${saleTable(sales, this.currency)} ${moveTable(moves, this.currency)} ${stockTable(changes)}`;
  }
}
customElements.define('pour-sell-preview', SellPreviewStep);

/** The lines to add to Sales, each as it will stand there. */
function saleTable(sales: readonly NewSale[], currency: string): TemplateResult {
  const [first] = sales;
  return html`<div>
    <table>
      <caption>
        ${asRead(`${count(sales.length, 'line')} for Sales`)}
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
              <td class="figure">${moneyText(priceEach, currency)}</td>
              <td class="figure">${moneyText(fees, currency)}</td>
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

import { html, type TemplateResult } from 'lit';
import { count } from '../../../src/domain/kernel/count.ts';
import { exact } from '../../../src/domain/kernel/exact.ts';
import type { NewSale, SalesPosting } from '../../../src/domain/ledger/sale.ts';
import { day, money } from '../../format.ts';
import { moveTable, stockTable } from '../../parts/ledger-tables.ts';
import { PreviewFrame, type PreviewWords } from '../../parts/preview-frame.ts';
import type { SellDraft } from '../draft.ts';

/** Second step of selling: exactly what will be written, or what stands in the way. */
export class SellPreviewStep extends PreviewFrame<SalesPosting> {
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

  protected override lines({ sales, moves, changes }: SalesPosting): TemplateResult {
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

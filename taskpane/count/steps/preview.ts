import { html, nothing, type TemplateResult } from 'lit';
import { count } from '../../../src/domain/kernel/count.ts';
import { sum } from '../../../src/domain/kernel/exact.ts';
import type { CountDifference } from '../../../src/domain/ledger/stocktake.ts';
import { ledgerAmount, moneyText } from '../../format.ts';
import { moveTable } from '../../parts/ledger-tables.ts';
import { noticeBar } from '../../parts/notice.ts';
import { PreviewFrame, type PreviewWords } from '../../parts/preview-frame.ts';
import type { CountToRecord } from '../count-task.ts';
import type { CountDraft } from '../draft.ts';

/** Second step of a count: where shelf and ledger differ, what it is worth, what will be written. */
export class CountPreviewStep extends PreviewFrame<CountToRecord> {
  static override properties = { draft: { attribute: false }, currency: { attribute: false } };

  declare draft: CountDraft;
  declare currency: string;

  protected override words(): PreviewWords {
    return {
      heading: 'Shelf and ledger',
      record: 'Record this count',
      id: this.draft.id,
      back: 'enter',
    };
  }

  protected override canRecord({ differences }: CountToRecord): boolean {
    return differences.length > 0;
  }

  protected override lines({ differences, moves, counted }: CountToRecord): TemplateResult {
    const agreeing = counted - differences.length;
    if (differences.length === 0) {
      return html`${noticeBar({
        kind: 'good',
        text: `${agreeing === 1 ? 'The 1 item counted agrees' : `All ${String(agreeing)} items counted agree`} with the ledger. There is nothing to write.`,
      })}`;
    }
    return html`${differenceTable(differences, this.currency)}
      <p>${this.worth(differences)}</p>
      ${agreeing === 0 ? nothing : html`<p class="quiet">${agree(agreeing)} with the ledger.</p>`}
      ${moveTable(moves, this.currency)}
      <p class="small quiet">To put a wrong count right, count again.</p>`;
  }

  private worth(differences: readonly CountDifference[]): string {
    const total = sum(differences.map(({ value }) => value));
    if (total.isZero()) return 'In all the differences are worth nothing.';
    return total.isNegative()
      ? `In all ${moneyText(total.abs(), this.currency)} of stock is missing.`
      : `In all ${moneyText(total, this.currency)} of stock was found.`;
  }
}
customElements.define('pour-count-preview', CountPreviewStep);

const agree = (number: number): string =>
  `${count(number, 'item')} ${number === 1 ? 'agrees' : 'agree'}`;

function differenceTable(
  differences: readonly CountDifference[],
  currency: string,
): TemplateResult {
  return html`<table class="small">
    <caption>
      ${count(differences.length, 'difference')}
    </caption>
    <thead>
      <tr>
        <th scope="col">Item</th>
        <th scope="col">Ledger</th>
        <th scope="col">Counted</th>
        <th scope="col">Worth</th>
      </tr>
    </thead>
    <tbody>
      ${differences.map(
        (line) =>
          html`<tr>
            <th scope="row">
              ${line.item.name}
              ${isFarOff(line) ? html`<br /><span class="small">Far off: check it.</span>` : nothing}
            </th>
            <td class="figure">${ledgerAmount(line.onHand, line.item.unit)}</td>
            <td class="figure">${ledgerAmount(line.counted, line.item.unit)}</td>
            <td class="figure">${moneyText(line.value, currency)}</td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}

/** More than half of what the ledger has: as often a slip of unit or scale as a loss. */
const isFarOff = ({ onHand, difference }: CountDifference): boolean =>
  difference.abs().gt(onHand.abs().div(2));

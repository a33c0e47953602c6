import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { count } from '../../../src/domain/kernel/count.ts';
import { sum } from '../../../src/domain/kernel/exact.ts';
import type { Result } from '../../../src/domain/kernel/result.ts';
import type { CountDifference } from '../../../src/domain/ledger/stocktake.ts';
import { ledgerAmount, money } from '../../format.ts';
import { cardLooks, looks, noticeLooks } from '../../looks.ts';
import { moveTable } from '../../parts/move-table.ts';
import { liveNotice, type Notice, noticeBar } from '../../parts/notice.ts';
import { halfWrittenNotice, recordActions } from '../../parts/record-actions.ts';
import type { CountToRecord } from '../count-task.ts';
import type { CountDraft } from '../draft.ts';
import { tell } from '../events.ts';

/** Second step of a count: where shelf and ledger differ, what it is worth, what will be written. */
export class CountPreviewStep extends LitElement {
  static override styles = [looks, cardLooks, noticeLooks];
  static override properties = {
    draft: { attribute: false },
    posting: { attribute: false },
    currency: { attribute: false },
    notice: { attribute: false },
    isBusy: { attribute: false },
    isHalfWritten: { attribute: false },
  };

  declare draft: CountDraft;
  declare posting: Result<CountToRecord>;
  declare currency: string;
  declare notice: Notice | undefined;
  declare isBusy: boolean;
  declare isHalfWritten: boolean;

  override render(): TemplateResult {
    return html`<div class="stack">
      <h2 tabindex="-1">Shelf and ledger</h2>
      ${this.isHalfWritten ? halfWrittenNotice(this.draft.id) : this.body()}
      ${liveNotice(this.notice)}
      ${recordActions({
        label: 'Record this count',
        canRecord: this.posting.ok && this.posting.value.differences.length > 0,
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
    const { differences, moves, counted } = this.posting.value;
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
      ? `In all ${money(total.abs(), this.currency)} of stock is missing.`
      : `In all ${money(total, this.currency)} of stock was found.`;
  }
}
customElements.define('pour-count-preview', CountPreviewStep);

const agree = (number: number): string =>
  `${count(number, 'item')} ${number === 1 ? 'agrees' : 'agree'}`;

function differenceTable(
  differences: readonly CountDifference[],
  currency: string,
): TemplateResult {
  return html`<table>
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
            <td class="figure">${money(line.value, currency)}</td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}

/** More than half of what the ledger has: as often a slip of unit or scale as a loss. */
const isFarOff = ({ onHand, difference }: CountDifference): boolean =>
  difference.abs().gt(onHand.abs().div(2));

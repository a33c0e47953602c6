import '@fluentui/web-components/button.js';
import { html, LitElement, type TemplateResult } from 'lit';
import type { PartnerCopy } from '../../../src/workbook/sharing/partner-copy.ts';
import { fieldLooks, looks, noticeLooks } from '../../looks.ts';
import { liveNotice, type Notice, noticeBar } from '../../parts/notice.ts';
import { nextTask } from '../../task/long-work.ts';
import { tellShown } from '../../task/look-task.ts';

/** A copy for a partner: with or without costs, as values only. */
export class PartnerPage extends LitElement {
  static override styles = [looks, fieldLooks, noticeLooks];
  static override properties = {
    copyOf: { attribute: false },
    give: { attribute: false },
    withCosts: { type: Boolean },
    notice: { state: true },
    isBusy: { state: true },
  };

  /** The copy as the book is now. */
  declare copyOf: (withCosts: boolean) => PartnerCopy;
  /** Hands it over and says where it is. */
  declare give: (copy: PartnerCopy) => Promise<Notice>;
  declare withCosts: boolean;
  declare notice: Notice | undefined;
  declare isBusy: boolean;

  override render(): TemplateResult {
    const { stillNamed } = this.copyOf(this.withCosts);
    return html`<div class="stack">
      <div>
        <h2 tabindex="-1">A copy for a partner</h2>
        <p class="quiet">
          A new workbook: the stock list, what can be made, and every table. Values only, nothing
          hidden, and it opens without this add-in.
        </p>
      </div>
      <div class="check">
        <input
          id="costs"
          type="checkbox"
          .checked=${this.withCosts}
          @change=${(event: Event) => {
            const { checked } = event.target as HTMLInputElement;
            this.notice = undefined;
            tellShown(this, { costs: checked ? 'with' : 'without' });
          }}
        />
        <label for="costs">With costs, prices and suppliers</label>
      </div>
      <p class="small quiet">
        ${
          this.withCosts
            ? 'Your partner will see what you paid, whom you paid and every note.'
            : 'Left out: every column of money, suppliers, notes, columns of your own, rates and fees in Settings.'
        }
      </p>
      ${stillNamed.map((text) => noticeBar({ kind: 'warn', text }))}
      <div class="actions">
        <fluent-button
          appearance="primary"
          id="make"
          ?disabled-focusable=${this.isBusy}
          @click=${() => {
            void this.make();
          }}
          >${this.isBusy ? 'Making it…' : 'Make the copy'}</fluent-button
        >
      </div>
      ${liveNotice(this.notice)}
    </div>`;
  }

  private async make(): Promise<void> {
    if (this.isBusy) return;
    this.isBusy = true;
    this.notice = undefined;
    // So that the page says so before it is held up.
    await nextTask();
    this.notice = await this.give(this.copyOf(this.withCosts));
    this.isBusy = false;
  }
}
customElements.define('pour-partner', PartnerPage);

import '@fluentui/web-components/button.js';
import { html, LitElement, type TemplateResult } from 'lit';
import type { PartnerCopy } from '../../../src/workbook/sharing/partner-copy.ts';
import { fieldLooks, looks, noticeLooks } from '../../looks.ts';
import { type Notice, noticeBar } from '../../parts/notice.ts';
import { workBar } from '../../parts/work-bar.ts';
import { pausing, type Progress } from '../../task/long-work.ts';
import { tellShown } from '../../task/look-task.ts';

const STOPPED: Notice = { kind: 'plain', text: 'Stopped. No copy was made.' };

/** A copy for a partner: with or without costs, as values only. */
export class PartnerPage extends LitElement {
  static override styles = [looks, fieldLooks, noticeLooks];
  static override properties = {
    copyOf: { attribute: false },
    give: { attribute: false },
    withCosts: { type: Boolean },
    notice: { state: true },
    progress: { state: true },
  };

  /** The copy as the book is now. */
  declare copyOf: (withCosts: boolean) => PartnerCopy;
  /** Hands it over and says where it is. */
  declare give: (copy: PartnerCopy, signal: AbortSignal) => Promise<Notice>;
  declare withCosts: boolean;
  declare notice: Notice | undefined;
  declare progress: Progress | undefined;
  private stopper = new AbortController();

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.stopper.abort();
  }

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
          ?disabled-focusable=${this.progress !== undefined}
          @click=${() => {
            void this.make();
          }}
          >Make the copy</fluent-button
        >
      </div>
      ${workBar(this.progress, this.notice, () => {
        this.stopper.abort();
        this.renderRoot.querySelector<HTMLElement>('#make')?.focus();
      })}
    </div>`;
  }

  private async make(): Promise<void> {
    if (this.progress !== undefined) return;
    this.stopper = new AbortController();
    const { signal } = this.stopper;
    this.notice = undefined;
    const pause = pausing(signal, (progress) => {
      this.progress = progress;
    });
    try {
      await pause('Making the copy…');
      this.notice = await this.give(this.copyOf(this.withCosts), signal);
    } catch (thrown) {
      if (!signal.aborted) throw thrown;
      this.notice = STOPPED;
    } finally {
      this.progress = undefined;
    }
  }
}
customElements.define('pour-partner', PartnerPage);

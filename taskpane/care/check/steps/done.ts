import '@fluentui/web-components/button.js';
import { html, LitElement, type TemplateResult } from 'lit';
import type { HealthFinding } from '../../../../src/domain/health/finding.ts';
import { count } from '../../../../src/domain/kernel/count.ts';
import { looks, noticeLooks } from '../../../looks.ts';
import { liveNotice, type Notice } from '../../../parts/notice.ts';
import { tell } from '../draft.ts';

/** Last step of mending: what the check finds in the book read back from the workbook. */
export class CheckDoneStep extends LitElement {
  static override styles = [looks, noticeLooks];
  static override properties = { findings: { attribute: false }, notice: { attribute: false } };

  declare findings: readonly HealthFinding[];
  declare notice: Notice | undefined;

  override render(): TemplateResult {
    const left = this.findings.length;
    return html`<div class="stack">
      <h2 tabindex="-1">Mended</h2>
      ${liveNotice(this.notice)}
      <p>${left === 0 ? 'The book is sound now.' : `${count(left, 'thing')} left to look at.`}</p>
      <p class="small quiet">
        Was it wrong after all? Put the stock right in Count, or undo the batch in Pour: the added
        lines stay, others are added against them.
      </p>
      <div class="actions">
        <fluent-button
          appearance="primary"
          id="another"
          @click=${() => {
            tell(this, 'task-another', undefined);
          }}
          >${left === 0 ? 'Back to the check' : 'Look at what is left'}</fluent-button
        >
      </div>
    </div>`;
  }
}
customElements.define('pour-check-done', CheckDoneStep);

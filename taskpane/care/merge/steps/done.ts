import '@fluentui/web-components/button.js';
import { html, LitElement, type TemplateResult } from 'lit';
import { looks, noticeLooks } from '../../../looks.ts';
import { liveNotice, type Notice } from '../../../parts/notice.ts';
import { showTask } from '../../../task/events.ts';
import { tell } from '../draft.ts';

/** Last step of bringing a copy in. */
export class MergeDoneStep extends LitElement {
  static override styles = [looks, noticeLooks];
  static override properties = { notice: { attribute: false } };

  declare notice: Notice | undefined;

  override render(): TemplateResult {
    return html`<div class="stack">
      <h2 tabindex="-1">Brought in</h2>
      ${liveNotice(this.notice)}
      <p>
        Two copies may each have used the same lot, or sold the same bar. The check shows it. Then
        give this workbook to the other person, so that both go on from the same.
      </p>
      <div class="actions">
        <fluent-button
          appearance="primary"
          id="check"
          @click=${() => {
            tell(this, 'task-another', undefined);
            showTask(this, 'check');
          }}
          >Check the book</fluent-button
        >
        <fluent-button
          appearance="subtle"
          id="another"
          @click=${() => {
            tell(this, 'task-another', undefined);
          }}
          >Another copy</fluent-button
        >
      </div>
    </div>`;
  }
}
customElements.define('pour-merge-done', MergeDoneStep);

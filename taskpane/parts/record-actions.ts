import '@fluentui/web-components/button.js';
import { html, nothing, type TemplateResult } from 'lit';
import { noticeBar } from './notice.ts';

/** The two ways on from a preview. */
export interface RecordActions {
  /** On the button that records. */
  readonly label: string;
  readonly canRecord: boolean;
  readonly isBusy: boolean;
  /** An earlier try wrote some of the lines: then there is no way but to finish it. */
  readonly isHalfWritten: boolean;
  readonly onRecord: () => void;
  readonly onBack: () => void;
}

/** Records what was looked over, or goes back. */
export function recordActions(actions: RecordActions): TemplateResult {
  const { label, isBusy, isHalfWritten } = actions;
  const canRecord = isHalfWritten || actions.canRecord;
  return html`<div class="actions">
    ${
      canRecord
        ? html`<fluent-button
            appearance="primary"
            id="record"
            ?disabled-focusable=${isBusy}
            @click=${actions.onRecord}
            >${isBusy ? 'Recording…' : label}</fluent-button
          >`
        : nothing
    }
    ${
      isHalfWritten
        ? nothing
        : html`<fluent-button
            id="back"
            appearance=${canRecord ? 'subtle' : 'outline'}
            ?disabled-focusable=${isBusy}
            @click=${actions.onBack}
            >Back</fluent-button
          >`
    }
  </div>`;
}

/** Says that an earlier try broke off, in place of what would be written. */
export function halfWrittenNotice(id: string): TemplateResult {
  return html`${noticeBar({
    kind: 'warn',
    text: `Recording of ${id} broke off: some of its lines are in the workbook. Record again to add the rest; what is there is not written twice.`,
  })}`;
}

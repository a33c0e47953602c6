import { html, type TemplateResult } from 'lit';
import type { Flow } from '../../task/flow.ts';
import type { Ready } from '../../task/session.ts';
import { stepShown, type TaskLook } from '../../task/task.ts';
import { chosenFinding, findingsOf } from './check-task.ts';
import type { CheckDraft } from './draft.ts';
import './steps/done.ts';
import './steps/findings.ts';
import './steps/preview.ts';

/** The pages of the health check; `brokenNames` are names of the workbook that lead nowhere. */
export const checkLook = (brokenNames: () => readonly string[]): TaskLook<CheckDraft> => ({
  name: 'check',
  label: 'Check',
  title: 'Check the book',
  page: (flow, state) => {
    const step = stepShown(flow);
    const isUnderWay = flow.busy === 'recording' || flow.isHalfWritten;
    if (step !== 'preview' || isUnderWay) return step;
    // Someone else may have mended it meanwhile.
    return chosenFinding(findingsOf(state, flow.who), flow.draft).ok ? step : 'enter';
  },
  content: (flow, state, page) => step(flow, state, page, brokenNames()),
});

function step(
  flow: Flow<CheckDraft>,
  state: Ready,
  page: CheckDraft['step'],
  brokenNames: readonly string[],
): TemplateResult {
  const { draft, notice, who } = flow;
  const findings = findingsOf(state, who);
  if (page === 'done') {
    return html`<pour-check-done .findings=${findings} .notice=${notice}></pour-check-done>`;
  }
  if (page === 'preview') {
    return html`<pour-check-preview
      .posting=${chosenFinding(findings, draft)}
      .currency=${state.book.settings.currency}
      .notice=${notice}
      .isBusy=${flow.busy !== undefined}
      .isHalfWritten=${flow.isHalfWritten}
    ></pour-check-preview>`;
  }
  return html`<pour-check
    .findings=${findings}
    .brokenNames=${brokenNames}
    .book=${state.book}
    .notice=${notice}
  ></pour-check>`;
}

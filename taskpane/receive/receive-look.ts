import { html, type TemplateResult } from 'lit';
import { stepBar } from '../parts/step-bar.ts';
import type { Flow } from '../task/flow.ts';
import type { Ready } from '../task/session.ts';
import { stepShown, type TaskLook } from '../task/task.ts';
import type { ReceiveDraft, ReceiveStep } from './draft.ts';
import { deliveryPosting } from './receive-task.ts';
import './steps/done.ts';
import './steps/enter.ts';
import './steps/preview.ts';

/** The pages of a delivery. */
export const receiveLook: TaskLook<ReceiveDraft> = {
  name: 'receive',
  label: 'Receive',
  title: 'Record a delivery',
  page: stepShown,
  content: (flow, state, page) =>
    html`${stepBar({ enter: 'What came', preview: 'Look over' }, page)} ${step(flow, state, page)}`,
};

function step(flow: Flow<ReceiveDraft>, state: Ready, page: ReceiveStep): TemplateResult {
  const { draft, notice, today, who } = flow;
  if (page === 'done') {
    return html`<pour-receive-done
      target=${draft.id}
      .book=${state.book}
      .draft=${draft}
      .today=${today}
      .notice=${notice}
      .isBusy=${flow.busy !== undefined}
    ></pour-receive-done>`;
  }
  const posting = deliveryPosting(state, draft, who);
  if (page === 'preview') {
    return html`<pour-receive-preview
      .book=${state.book}
      .draft=${draft}
      .posting=${posting}
      .notice=${notice}
      .isBusy=${flow.busy !== undefined}
      .isHalfWritten=${flow.isHalfWritten}
    ></pour-receive-preview>`;
  }
  return html`<pour-receive
    .book=${state.book}
    .draft=${draft}
    .posting=${posting}
    .notice=${notice}
    .isBusy=${flow.busy !== undefined}
  ></pour-receive>`;
}

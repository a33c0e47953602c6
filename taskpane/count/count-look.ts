import { html, type TemplateResult } from 'lit';
import { stepBar } from '../parts/step-bar.ts';
import type { Flow } from '../task/flow.ts';
import type { Ready } from '../task/session.ts';
import { stepShown, type TaskLook } from '../task/task.ts';
import { countPosting } from './count-task.ts';
import type { CountDraft, CountStep } from './draft.ts';
import './steps/done.ts';
import './steps/enter.ts';
import './steps/preview.ts';

/** The pages of a count. */
export const countLook: TaskLook<CountDraft> = {
  name: 'count',
  label: 'Count',
  title: 'Count the shelf',
  page: stepShown,
  content: (flow, state, page) =>
    html`${stepBar({ enter: 'Count', preview: 'Look over' }, page)} ${step(flow, state, page)}`,
};

function step(flow: Flow<CountDraft>, state: Ready, page: CountStep): TemplateResult {
  const { draft, notice, today, who } = flow;
  if (page === 'done') {
    return html`<pour-count-done
      target=${draft.id}
      .book=${state.book}
      .today=${today}
      .notice=${notice}
    ></pour-count-done>`;
  }
  const posting = countPosting(state, draft, who);
  if (page === 'preview') {
    return html`<pour-count-preview
      .draft=${draft}
      .posting=${posting}
      .currency=${state.book.settings.currency}
      .notice=${notice}
      .isBusy=${flow.busy !== undefined}
      .isHalfWritten=${flow.isHalfWritten}
    ></pour-count-preview>`;
  }
  return html`<pour-count
    .book=${state.book}
    .draft=${draft}
    .posting=${posting}
    .notice=${notice}
  ></pour-count>`;
}

import { html, type TemplateResult } from 'lit';
import { stepBar } from '../parts/step-bar.ts';
import type { Flow } from '../task/flow.ts';
import type { Ready } from '../task/session.ts';
import { stepShown, type TaskLook } from '../task/task.ts';
import type { SellDraft, SellStep } from './draft.ts';
import { salesPosting } from './sell-task.ts';
import './steps/done.ts';
import './steps/enter.ts';
import './steps/preview.ts';

/** The pages of selling. */
export const sellLook: TaskLook<SellDraft> = {
  name: 'sell',
  label: 'Sell',
  title: 'Record sales',
  page: stepShown,
  content: (flow, state, page) =>
    html`${stepBar({ enter: 'What was sold', preview: 'Look over' }, page)}
    ${step(flow, state, page)}`,
};

function step(flow: Flow<SellDraft>, state: Ready, page: SellStep): TemplateResult {
  const { book } = state;
  const { draft, notice, today, who } = flow;
  const isBusy = flow.busy !== undefined;
  if (page === 'done') {
    return html`<pour-sell-done
      target=${draft.id}
      .book=${book}
      .notice=${notice}
      .isBusy=${isBusy}
    ></pour-sell-done>`;
  }
  const posting = salesPosting(state, draft, who);
  if (page === 'preview') {
    return html`<pour-sell-preview
      .draft=${draft}
      .posting=${posting}
      .currency=${book.settings.currency}
      .notice=${notice}
      .isBusy=${isBusy}
      .isHalfWritten=${flow.isHalfWritten}
    ></pour-sell-preview>`;
  }
  return html`<pour-sell
    .book=${book}
    .draft=${draft}
    .posting=${posting}
    .today=${today}
    .notice=${notice}
    .isBusy=${isBusy}
  ></pour-sell>`;
}

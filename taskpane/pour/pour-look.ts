import { html, type TemplateResult } from 'lit';
import { stepBar } from '../parts/step-bar.ts';
import type { Flow } from '../task/flow.ts';
import type { Ready } from '../task/session.ts';
import type { TaskLook } from '../task/task.ts';
import type { Draft, Step } from './draft.ts';
import { planOfDraft, type PlannedPour } from './pour-of-draft.ts';
import { pouredAlike } from './poured-alike.ts';
import { postingAsPlanned, postingOf, shortagesOf } from './record.ts';
import './steps/choose.ts';
import './steps/done.ts';
import './steps/outcome.ts';
import './steps/preview.ts';
import './steps/weigh.ts';

/** The pour's pages. */
export const pourLook: TaskLook<Draft> = {
  name: 'pour',
  label: 'Pour',
  title: 'Record a pour',
  page(flow, { book }) {
    if (flow.draft.step === 'choose' || flow.draft.step === 'done') return flow.draft.step;
    if (flow.busy !== undefined || flow.isHalfWritten) return 'preview';
    return planOfDraft(book, flow.draft, flow.today).ok ? flow.draft.step : 'choose';
  },
  content: (flow, state, page) => html`${stepBar(names, page)} ${step(flow, state, page)}`,
};

const names = {
  choose: 'Choose',
  weigh: 'Weigh out',
  outcome: 'What came out',
  preview: 'Look over',
};

function step(flow: Flow<Draft>, state: Ready, page: Step): TemplateResult {
  const { book } = state;
  const { draft, today, notice } = flow;
  const isBusy = flow.busy !== undefined;
  if (page === 'done') {
    return html`<pour-done
      target=${draft.batch}
      .book=${book}
      .today=${today}
      .notice=${notice}
      .isBusy=${isBusy}
    ></pour-done>`;
  }
  if (page === 'preview') {
    const posting = postingOf(state, draft, flow.who);
    const isReady = posting.ok && posting.value.kind === 'ready';
    return html`<pour-preview
      .draft=${draft}
      .posting=${posting}
      .alike=${isReady ? pouredAlike(book, posting.value.posting.batch) : []}
      .shortages=${shortagesOf(state, draft, flow.who)}
      .currency=${book.settings.currency}
      .notice=${notice}
      .isBusy=${isBusy}
      .isHalfWritten=${flow.isHalfWritten}
    ></pour-preview>`;
  }
  const planned = planOfDraft(book, draft, today);
  if (page !== 'choose' && planned.ok) return atTheBench(flow, state, page, planned.value);
  return html`<pour-choose
    .book=${book}
    .draft=${draft}
    .planned=${planned}
    .today=${today}
    .notice=${notice}
    .isBusy=${isBusy}
  ></pour-choose>`;
}

function atTheBench(
  { draft, today, who }: Flow<Draft>,
  state: Ready,
  page: 'weigh' | 'outcome',
  planned: PlannedPour,
): TemplateResult {
  if (page === 'weigh') {
    return html`<pour-weigh
      .book=${state.book}
      .draft=${draft}
      .planned=${planned}
      .stock=${postingAsPlanned(state.book, draft.batch, planned, today)}
      .today=${today}
    ></pour-weigh>`;
  }
  return html`<pour-outcome
    .draft=${draft}
    .planned=${planned}
    .checked=${postingOf(state, draft, who)}
  ></pour-outcome>`;
}

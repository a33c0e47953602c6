import { html, type TemplateResult } from 'lit';
import type { HostFiles } from '../../../src/workbook/port.ts';
import type { Flow } from '../../task/flow.ts';
import type { Ready } from '../../task/session.ts';
import { stepShown, type TaskLook } from '../../task/task.ts';
import type { MergeDraft } from './draft.ts';
import { planOf, preparer } from './merge-task.ts';
import './steps/choose.ts';
import './steps/done.ts';
import './steps/preview.ts';

/** The pages of bringing another copy in. */
export const mergeLook = (files: HostFiles): TaskLook<MergeDraft> => ({
  name: 'merge',
  label: 'Merge',
  title: 'Bring in another copy',
  page: (flow) => {
    const step = stepShown(flow);
    const isUnderWay = flow.busy === 'recording' || flow.isHalfWritten;
    return step === 'preview' && flow.draft.copy === undefined && !isUnderWay ? 'enter' : step;
  },
  content: (flow, state, page) => step(flow, state, page, files),
});

function step(
  flow: Flow<MergeDraft>,
  state: Ready,
  page: MergeDraft['step'],
  files: HostFiles,
): TemplateResult {
  const { draft, notice } = flow;
  if (page === 'done') return html`<pour-merge-done .notice=${notice}></pour-merge-done>`;
  if (page === 'preview') {
    return html`<pour-merge-preview
      .fileName=${draft.fileName}
      .posting=${planOf(state, draft)}
      .chosen=${draft.chosen}
      .notice=${notice}
      .isBusy=${flow.busy !== undefined}
      .isHalfWritten=${flow.isHalfWritten}
    ></pour-merge-preview>`;
  }
  return html`<pour-merge
    .draft=${draft}
    .files=${files}
    .prepare=${preparer(state)}
    .notice=${notice}
  ></pour-merge>`;
}

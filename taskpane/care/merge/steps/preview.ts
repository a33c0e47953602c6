import { html, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { count } from '../../../../src/domain/kernel/count.ts';
import { tables } from '../../../../src/workbook/schema.ts';
import type { MergePlan, Side } from '../../../../src/workbook/sharing/merge-into.ts';
import { noticeBar } from '../../../parts/notice.ts';
import { PreviewFrame, type PreviewWords } from '../../../parts/preview-frame.ts';
import { differenceCard } from '../difference-card.ts';
import { tell } from '../draft.ts';
import { hasNothingToWrite, namedFirst, nothingToWrite, stillToChoose } from '../merge-task.ts';

/** Second step of bringing a copy in: what is added, what differs, what stays out. */
export class MergePreviewStep extends PreviewFrame<MergePlan> {
  static override properties: PropertyDeclarations = {
    fileName: {},
    chosen: { attribute: false },
  };

  declare fileName: string;
  declare chosen: Readonly<Record<string, Side>>;

  protected override words(): PreviewWords {
    return {
      heading: 'What comes in',
      record: 'Bring it in',
      id: this.fileName === '' ? 'the other copy' : this.fileName,
      back: 'enter',
    };
  }

  protected override canRecord(plan: MergePlan): boolean {
    return !hasNothingToWrite(plan) && stillToChoose(plan) === undefined;
  }

  protected override lines(plan: MergePlan): TemplateResult {
    const { added, differences, leftOut } = plan;
    const open = stillToChoose(plan);
    const isDone = open === undefined && hasNothingToWrite(plan);
    return html`<p class="quiet">From ${this.fileName}. All of it is written, or nothing.</p>
      ${isDone ? noticeBar({ kind: 'good', text: nothingToWrite(plan) }) : nothing}
      ${added.length === 0 ? nothing : addedTable(added)}
      ${
        differences.length === 0
          ? nothing
          : html`<section class="stack" aria-labelledby="differences">
              <div>
                <h3 id="differences">${count(differences.length, 'difference')}</h3>
                <p class="small quiet">
                  Both copies have these, not alike. The version that is not kept stays in its own
                  file only: note down what you still need.
                </p>
              </div>
              ${differences.map((difference) =>
                differenceCard(difference, (key, side) => {
                  tell(this, 'task-told', { chosen: { ...this.chosen, [key]: side } });
                }),
              )}
            </section>`
      }
      ${
        leftOut.length === 0
          ? nothing
          : html`<section class="stack tight" aria-labelledby="left-out">
              <h3 id="left-out">Not brought in</h3>
              <ul class="stack tight">
                ${leftOut.map((sentence) => html`<li>${sentence}</li>`)}
              </ul>
            </section>`
      }
      ${open === undefined ? nothing : noticeBar({ kind: 'warn', text: open })}`;
  }
}
customElements.define('pour-merge-preview', MergePreviewStep);

/** As many names as a person looks through. */
const MOST_NAMED = 12;

function addedTable(added: MergePlan['added']): TemplateResult {
  return html`<table>
    <caption>
      Only in the other copy
    </caption>
    <thead>
      <tr>
        <th scope="col">Table</th>
        <th scope="col">Added</th>
      </tr>
    </thead>
    <tbody>
      ${added.map(
        ({ kind, ids }) =>
          html`<tr>
            <th scope="row">
              ${tables[kind].name}<br /><span class="small quiet"
                >${namedFirst(ids, MOST_NAMED)}</span
              >
            </th>
            <td class="figure">${ids.length}</td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}

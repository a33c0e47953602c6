import '@fluentui/web-components/button.js';
import { html, LitElement, nothing, type TemplateResult } from 'lit';
import type { Book } from '../../../../src/domain/book/book.ts';
import type { HealthFinding } from '../../../../src/domain/health/finding.ts';
import { count } from '../../../../src/domain/kernel/count.ts';
import { asRead } from '../../../as-read.ts';
import { cardLooks, looks, noticeLooks } from '../../../looks.ts';
import { assumedList } from '../../../parts/assumed.ts';
import { liveNotice, type Notice, noticeBar } from '../../../parts/notice.ts';
import { keyOf } from '../check-task.ts';
import { tell } from '../draft.ts';

/** First step of the check: what is not as it should be, each with what to do. */
export class CheckStep extends LitElement {
  static override styles = [looks, cardLooks, noticeLooks];
  static override properties = {
    findings: { attribute: false },
    brokenNames: { attribute: false },
    book: { attribute: false },
    notice: { attribute: false },
  };

  declare findings: readonly HealthFinding[];
  /** Names of the workbook that lead nowhere. */
  declare brokenNames: readonly string[];
  declare book: Book;
  declare notice: Notice | undefined;

  override render(): TemplateResult {
    const { findings, brokenNames } = this;
    const number = findings.length + brokenNames.length;
    const shown = findings.slice(0, MOST_SHOWN);
    const more = findings.length - shown.length;
    return html`<div class="stack">
      <div>
        <h2 tabindex="-1">${titleOf(number)}</h2>
        <p class="quiet">${this.scope()}</p>
      </div>
      ${
        number === 0
          ? noticeBar({
              kind: 'good',
              text: 'Every batch has its ledger lines, no stock was ever below zero, no line stands twice.',
            })
          : html`<p>
                One at a time: mending one may mend the next. If somebody is recording just now,
                wait a minute and check again.
              </p>
              <ol class="stack">
                ${shown.map((finding, index) => html`<li>${card(finding, index, this)}</li>`)}
                ${brokenNames.map((name, index) => html`<li>${nameCard(name, shown.length + index + 1)}</li>`)}
              </ol>
              ${
                more > 0
                  ? html`<p>And ${count(more, 'more thing')}. They move up as you mend these.</p>`
                  : nothing
              }`
      }
      ${assumedList('Assumed where the workbook leaves it open', this.book.assumptions)}
      ${liveNotice(this.notice)}
      <div class="actions">
        <fluent-button
          id="again"
          @click=${() => {
            tell(this, 'task-check-again', undefined);
          }}
          >Check again</fluent-button
        >
      </div>
    </div>`;
  }

  private scope(): string {
    const { ledger, batches, lots } = this.book;
    return `Looked at ${count(ledger.length, 'ledger line')}, ${count(batches.size, 'batch', 'batches')} and ${count(lots.length, 'lot')}.`;
  }
}
customElements.define('pour-check', CheckStep);

/** More than anybody mends in one sitting. */
const MOST_SHOWN = 10;

function titleOf(number: number): string {
  if (number === 0) return 'The book is sound';
  return `${count(number, 'thing')} to look at`;
}

function card(finding: HealthFinding, index: number, from: HTMLElement): TemplateResult {
  const { kind, says, repair } = finding;
  const number = index + 1;
  return html`<section class="card" aria-labelledby="finding-${number}">
    <header><h3 id="finding-${number}">${number}. ${asTitle(kind)}</h3></header>
    <div class="body stack tight">
      <p>${asRead(says)}</p>
      ${
        repair === undefined
          ? html`<p class="quiet">Only you can know what happened, so no lines are offered.</p>`
          : html`<div class="actions">
              <fluent-button
                id="mend-${number}"
                aria-label="Show the lines that mend ${number}"
                @click=${() => {
                  tell(from, 'task-told', { finding: keyOf(finding), step: 'preview' });
                }}
                >Show the lines that mend it</fluent-button
              >
            </div>`
      }
    </div>
  </section>`;
}

/** A name is no line: only the host's own list of names can mend it. */
const nameCard = (name: string, number: number): TemplateResult =>
  html`<section class="card" aria-labelledby="finding-${number}">
    <header><h3 id="finding-${number}">${number}. Name that leads nowhere</h3></header>
    <p class="body">
      The name ${name} pointed to cells that were deleted (#REF!), so formulas that use it fail. In
      Excel: Formulas tab, Name Manager: point it to its cells again, or delete it.
    </p>
  </section>`;

const asTitle = (kind: string): string => kind.slice(0, 1).toUpperCase() + kind.slice(1);

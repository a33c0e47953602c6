import '@fluentui/web-components/button.js';
import { html, LitElement, nothing, type TemplateResult } from 'lit';
import type { Book } from '../../src/domain/book/book.ts';
import { count } from '../../src/domain/kernel/count.ts';
import type { Day } from '../../src/domain/kernel/day.ts';
import type { Advice, AdviceKind } from '../../src/domain/now/advice.ts';
import { withoutPoint } from '../../src/domain/now/now-order.ts';
import { planNotes } from '../../src/domain/now/plan-notes.ts';
import { whatNow } from '../../src/domain/now/what-now.ts';
import { asRead } from '../as-read.ts';
import { day } from '../format.ts';
import { cardLooks, fieldLooks, looks, noticeLooks } from '../looks.ts';
import { noticeBar } from '../parts/notice.ts';
import { showTask } from '../task/events.ts';

/** Where each kind of advice is recorded once it is done. */
const places: Readonly<Record<AdviceKind, readonly [task: string, label: string]>> = {
  order: ['receive', 'When it came: receive it'],
  pour: ['pour', 'Record the pour'],
  sell: ['sell', 'Record sales'],
  count: ['count', 'Count the shelf'],
};

/**
 * What now? The three things most worth doing today.
 * @fires task-show with the name of the task to go to
 */
export class NowPage extends LitElement {
  static override styles = [looks, fieldLooks, cardLooks, noticeLooks];
  static override properties = { book: { attribute: false }, today: { attribute: false } };

  declare book: Book;
  declare today: Day;

  override render(): TemplateResult {
    const advice = whatNow(this.book, this.today);
    return html`<div class="stack">
      <div>
        <h2 tabindex="-1">What now?</h2>
        <p class="quiet">Most worth doing today, ${day(this.today)}.</p>
      </div>
      ${
        advice.length === 0
          ? this.nothing()
          : html`<ol class="stack">
              ${advice.map((one, index) => html`<li>${this.card(one, index + 1)}</li>`)}
            </ol>`
      }
      ${this.besides()}
    </div>`;
  }

  /** Nothing to do, and how much of the shelf that can be said of. */
  private nothing() {
    const all = this.book.materials.size;
    const blind = withoutPoint(this.book, this.today).length;
    if (blind === 0) {
      return noticeBar({
        kind: 'good',
        text: 'Nothing is pressing: all stock is above its reorder point and the plan is in time.',
      });
    }
    const without =
      blind === all
        ? 'No material has a reorder point yet'
        : `${String(blind)} of ${count(all, 'material')} ${blind === 1 ? 'has' : 'have'} no reorder point yet`;
    return noticeBar(
      { kind: 'plain', text: 'Nothing is pressing that the workbook knows of.' },
      html`<p>
        ${without}, so stock that runs low is not seen there. Reorder says what is missing.
      </p>`,
    );
  }

  /** What the plan leaves to fill in or takes for granted; a line that does not fit has its card. */
  private besides(): TemplateResult | typeof nothing {
    const notes = planNotes(this.book, this.today, { reuse: false });
    const others = notes.ok ? notes.value.filter(({ kind }) => kind !== 'line') : [];
    if (others.length === 0) return nothing;
    return html`<details class="small">
      <summary>Left open or assumed in the plan (${others.length})</summary>
      <ul class="stack tight">
        ${others.map(({ sentence }) => html`<li>${asRead(sentence)}</li>`)}
      </ul>
    </details>`;
  }

  private card({ kind, title, reasons }: Advice, number: number): TemplateResult {
    const [task, label] = places[kind];
    return html`<section class="card" aria-labelledby="advice-${number}">
      <header>
        <h3 id="advice-${number}">${number}. ${title}</h3>
      </header>
      <div class="body stack tight">
        ${reasons.map((reason) => html`<p>${asRead(reason)}</p>`)}
        <div class="actions">
          <fluent-button
            id="go-${number}"
            @click=${() => {
              showTask(this, task);
            }}
            >${label}</fluent-button
          >
        </div>
      </div>
    </section>`;
  }
}
customElements.define('pour-now', NowPage);

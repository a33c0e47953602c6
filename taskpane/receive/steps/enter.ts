import '@fluentui/web-components/button.js';
import { html, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { Book } from '../../../src/domain/book/book.ts';
import { compareNames } from '../../../src/domain/kernel/names.ts';
import { cardLooks, fieldLooks, looks, noticeLooks } from '../../looks.ts';
import { dateField } from '../../parts/date-field.ts';
import { EnterFrame } from '../../parts/enter-frame.ts';
import { linkLooks, placeLink } from '../../parts/place-link.ts';
import { noticeBar } from '../../parts/notice.ts';
import { numberField } from '../../parts/number-field.ts';
import { recentList, recentLooks } from '../../parts/recent-list.ts';
import { selectField } from '../../parts/select-field.ts';
import { moneyIn, readTyped } from '../../typed-number.ts';
import { blankLot, freightShares, type ReceiveDraft, tell, withLot } from '../draft.ts';
import { suppliersIn } from '../questions.ts';
import { lotCard } from '../lot-card.ts';
import { recentDeliveries, UNDO_MEANS } from '../recent-deliveries.ts';

/** First step of a delivery: from whom, when, and what came. */
export class ReceiveEnterStep extends EnterFrame {
  static override styles = [looks, fieldLooks, cardLooks, noticeLooks, linkLooks, recentLooks];
  static override properties = {
    book: { attribute: false },
    draft: { attribute: false },
    isBusy: { attribute: false },
  };

  declare book: Book;
  declare draft: ReceiveDraft;
  declare isBusy: boolean;

  override render(): TemplateResult {
    if (this.book.materials.size === 0) {
      return html`<div class="stack">
        <h2 tabindex="-1">What came?</h2>
        ${noticeBar(
          {
            kind: 'plain',
            text: 'There is no material yet. Add one line to Materials for each; they appear here at once.',
          },
          placeLink(this, { kind: 'materials' }, 'Type there', 'Materials'),
        )}
      </div>`;
    }
    return html`<div class="stack">
      <h2 tabindex="-1">What came?</h2>
      ${this.from()} ${this.lines()} ${this.freight()} ${this.wayOn('See what will be written')}
      ${recentList('Last deliveries', recentDeliveries(this.book), this.isBusy, UNDO_MEANS)}
    </div>`;
  }

  private from() {
    return html`<div class="row">
      <div class="field">
        <label for="supplier">Supplier</label>
        <input
          id="supplier"
          list="suppliers"
          autocomplete="off"
          maxlength="100"
          .value=${live(this.draft.supplier)}
          @input=${(event: InputEvent) => {
            tell(this, 'task-told', { supplier: (event.target as HTMLInputElement).value });
          }}
        />
        <datalist id="suppliers">
          ${suppliersIn(this.book)
            .sort(compareNames)
            .map((name) => html`<option value=${name}></option>`)}
        </datalist>
      </div>
      ${dateField({
        id: 'received',
        label: 'Date received',
        value: this.draft.received,
        onChosen: (received) => {
          tell(this, 'task-told', { received });
        },
      })}
    </div>`;
  }

  private lines() {
    const { lines } = this.draft;
    return html`${lines.map((line, at) =>
        lotCard({
          line,
          at,
          book: this.book,
          onTold: (told) => {
            tell(this, 'task-told', { lines: withLot(lines, at, told) });
          },
          onRemoved:
            lines.length === 1
              ? undefined
              : () => {
                  tell(this, 'task-told', { lines: lines.filter((_, index) => index !== at) });
                },
        }),
      )}
      <div class="actions">
        <fluent-button id="add-line" @click=${this.addLine}>Add another material</fluent-button>
      </div>`;
  }

  private addLine(): void {
    const { lines } = this.draft;
    tell(this, 'task-told', { lines: [...lines, blankLot] });
    void this.updateComplete.then(() => {
      this.renderRoot.querySelector<HTMLElement>(`#material-${String(lines.length)}`)?.focus();
    });
  }

  private freight() {
    const { freight, shareBy, lines } = this.draft;
    const amountOf = moneyIn(this.book.settings.currency);
    const read = freight.trim() === '' ? undefined : readTyped(freight, 'Freight', amountOf);
    const texts = { value: 'By value', weight: 'By weight' };
    return html`<div class="row">
      ${numberField({
        id: 'freight',
        label: 'Freight of all of it',
        unit: this.book.settings.currency,
        value: freight,
        amountOf,
        hint: 'Blank is none.',
        error: read?.ok === false ? read.failure.sentence : undefined,
        onTyped: (text) => {
          tell(this, 'task-told', { freight: text });
        },
      })}
      ${
        lines.length === 1
          ? nothing
          : selectField({
              id: 'share-by',
              label: 'Shared out',
              value: shareBy,
              choices: freightShares.map((share) => ({ value: share, text: texts[share] })),
              onChosen: (share) => {
                tell(this, 'task-told', { shareBy: share === 'weight' ? 'weight' : 'value' });
              },
            })
      }
    </div>`;
  }
}
customElements.define('pour-receive', ReceiveEnterStep);

import '@fluentui/web-components/button.js';
import { html, LitElement, nothing, type TemplateResult } from 'lit';
import type { Book } from '../../../src/domain/book/book.ts';
import { nameKey } from '../../../src/domain/kernel/names.ts';
import { fairResult, salesResult } from '../../../src/domain/sell/fair-result.ts';
import { takingsByFair } from '../../costs/pictures.ts';
import { day } from '../../format.ts';
import { cardLooks, looks, noticeLooks } from '../../looks.ts';
import { liveNotice, type Notice, noticeBar } from '../../parts/notice.ts';
import '../../parts/undo-button.ts';
import '../../pictures/picture.ts';
import { tell } from '../events.ts';
import { resultLines, resultSentence } from '../result-words.ts';
import { salesOfDay } from '../sell-task.ts';
import { sellingDays } from '../selling-days.ts';

/** Last step of selling: what the day brought home, read back from the workbook itself. */
export class SellDoneStep extends LitElement {
  static override styles = [looks, cardLooks, noticeLooks];
  static override properties = {
    target: {},
    book: { attribute: false },
    notice: { attribute: false },
    isBusy: { attribute: false },
  };

  /** Id of the selling day. */
  declare target: string;
  declare book: Book;
  declare notice: Notice | undefined;
  declare isBusy: boolean;

  override render() {
    const past = sellingDays(this.book).find(({ id }) => nameKey(id) === nameKey(this.target));
    const stands = past !== undefined && !past.isUndone;
    const title = past === undefined ? 'Not in the workbook' : stands ? 'Recorded' : 'Undone';
    return html`<div class="stack">
      <div>
        <h2 tabindex="-1">${title}</h2>
        <p class="quiet">
          ${
            past === undefined
              ? `No line of ${this.target} is in Sales any more.`
              : `${past.fair === '' ? 'Sold at no fair' : past.fair}, ${day(past.soldOn)}, ${past.id}`
          }
        </p>
      </div>
      ${liveNotice(this.notice)} ${stands ? this.result(past.fair) : nothing}
      <div class="actions">
        <fluent-button
          appearance="primary"
          id="another"
          @click=${() => {
            tell(this, 'task-another', undefined);
          }}
          >Record more sales</fluent-button
        >
      </div>
      ${
        stands
          ? html`<pour-undo-button
              target=${past.id}
              name="sales ${past.id}"
              ?isBusy=${this.isBusy}
            ></pour-undo-button>`
          : nothing
      }
    </div>`;
  }

  /** Of the whole fair, with what was recorded on other days; else of these sales alone. */
  private result(fairName: string): TemplateResult {
    const { book } = this;
    const { currency } = book.settings;
    const fair = book.fairs.get(nameKey(fairName));
    const result =
      fair === undefined
        ? salesResult(book, salesOfDay(book, this.target))
        : fairResult(book, fair);
    if (!result.ok) {
      return html`${noticeBar({
        kind: 'warn',
        text: `The result can’t be worked out yet. ${result.failure.sentence}`,
      })}`;
    }
    return html`<section class="stack tight" aria-labelledby="result">
      <h3 id="result">${fair === undefined ? 'What it brought home' : `${fair.fair} so far`}</h3>
      <p>${resultSentence(result.value, currency)}</p>
      <dl>
        ${resultLines(result.value, currency).map(
          ([name, text]) =>
            html`<dt>${name}</dt>
              <dd>${text}</dd>`,
        )}
      </dl>
      ${fair === undefined ? nothing : this.fairs()}
    </section>`;
  }

  /** This fair beside the others, once there is another to compare it with. */
  private fairs() {
    const picture = takingsByFair(this.book);
    return picture.ok && picture.value.rows.length > 1
      ? html`<pour-picture .picture=${picture.value}></pour-picture>`
      : nothing;
  }
}
customElements.define('pour-sell-done', SellDoneStep);

import { html, nothing, type TemplateResult } from 'lit';
import { nameKey } from '../../../src/domain/kernel/names.ts';
import { fairResult, salesResult } from '../../../src/domain/sell/fair-result.ts';
import { takingsByFair } from '../../parts/takings-by-fair.ts';
import { day } from '../../format.ts';
import { type Done, DoneFrame } from '../../parts/done-frame.ts';
import { noticeBar } from '../../parts/notice.ts';
import '../../pictures/picture.ts';
import { resultLines, resultSentence } from '../result-words.ts';
import { salesOfDay } from '../sell-task.ts';
import { sellingDays } from '../selling-days.ts';

/** Last step of selling: what the day brought home. */
export class SellDoneStep extends DoneFrame {
  protected override done(): Done {
    const past = sellingDays(this.book).find(({ id }) => nameKey(id) === nameKey(this.target));
    const another = 'Record more sales';
    if (past === undefined) {
      return {
        heading: 'Not in the workbook',
        about: `No line of ${this.target} is in Sales any more.`,
        another,
        content: nothing,
        undo: undefined,
      };
    }
    const { fair, soldOn, id, isUndone } = past;
    return {
      heading: isUndone ? 'Undone' : 'Recorded',
      about: `${fair === '' ? 'Sold at no fair' : fair}, ${day(soldOn)}, ${id}`,
      another,
      content: isUndone ? nothing : this.result(fair),
      undo: isUndone ? undefined : `sales ${id}`,
    };
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

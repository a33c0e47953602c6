import '@fluentui/web-components/button.js';
import { html, LitElement, type TemplateResult } from 'lit';
import type { Book } from '../../../src/domain/book/book.ts';
import type { Day } from '../../../src/domain/kernel/day.ts';
import { onHand } from '../../../src/domain/stock/on-hand.ts';
import { ledgerAmount } from '../../format.ts';
import { cardLooks, looks, noticeLooks } from '../../looks.ts';
import { liveNotice, type Notice } from '../../parts/notice.ts';
import { movesOfCount } from '../count-task.ts';
import { tell } from '../events.ts';

/** Last step of a count: what the ledger holds now, read back from the workbook itself. */
export class CountDoneStep extends LitElement {
  static override styles = [looks, cardLooks, noticeLooks];
  static override properties = {
    target: {},
    book: { attribute: false },
    today: { attribute: false },
    notice: { attribute: false },
  };

  /** Id of the count. */
  declare target: string;
  declare book: Book;
  declare today: Day;
  declare notice: Notice | undefined;

  override render(): TemplateResult {
    const moves = movesOfCount(this.book, this.target);
    const items = [...new Map(moves.map(({ item }) => [item.name, item])).values()];
    return html`<div class="stack">
      <div>
        <h2 tabindex="-1">${items.length === 0 ? 'Not in the workbook' : 'Recorded'}</h2>
        <p class="quiet">Count ${this.target}</p>
      </div>
      ${liveNotice(this.notice)}
      <table>
        <caption>
          In stock now
        </caption>
        <tbody>
          ${items.map(
            (item) =>
              html`<tr>
                <th scope="row">${item.name}</th>
                <td class="figure">
                  ${ledgerAmount(onHand(this.book, item, this.today), item.unit)}
                </td>
              </tr>`,
          )}
        </tbody>
      </table>
      <div class="actions">
        <fluent-button
          appearance="primary"
          id="another"
          @click=${() => {
            tell(this, 'task-another', undefined);
          }}
          >Count again</fluent-button
        >
      </div>
    </div>`;
  }
}
customElements.define('pour-count-done', CountDoneStep);

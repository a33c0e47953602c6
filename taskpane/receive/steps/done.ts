import '@fluentui/web-components/button.js';
import { html, LitElement, type TemplateResult } from 'lit';
import type { Book } from '../../../src/domain/book/book.ts';
import { itemOfMaterial } from '../../../src/domain/book/find.ts';
import type { Day } from '../../../src/domain/kernel/day.ts';
import { onHand } from '../../../src/domain/stock/on-hand.ts';
import { ledgerAmount } from '../../format.ts';
import { cardLooks, looks, noticeLooks } from '../../looks.ts';
import { liveNotice, type Notice } from '../../parts/notice.ts';
import type { ReceiveDraft } from '../draft.ts';
import { tell } from '../events.ts';
import { lotsOfDelivery } from '../receive-task.ts';

/** Last step of a delivery: what is in stock now, read back from the workbook itself. */
export class ReceiveDoneStep extends LitElement {
  static override styles = [looks, cardLooks, noticeLooks];
  static override properties = {
    book: { attribute: false },
    draft: { attribute: false },
    today: { attribute: false },
    notice: { attribute: false },
  };

  declare book: Book;
  declare draft: ReceiveDraft;
  declare today: Day;
  declare notice: Notice | undefined;

  override render(): TemplateResult {
    const lots = lotsOfDelivery(this.book, this.draft);
    return html`<div class="stack">
      <div>
        <h2 tabindex="-1">${lots.length === 0 ? 'Changed in the workbook' : 'Recorded'}</h2>
        <p class="quiet">
          ${
            lots.length === 0
              ? `The lines of ${this.draft.id} in Lots are no longer as they were recorded.`
              : `Delivery ${this.draft.id}`
          }
        </p>
      </div>
      ${liveNotice(this.notice)}
      <table>
        <caption>
          In stock now
        </caption>
        <tbody>
          ${[...new Set(lots.map(({ material }) => material))].map(
            (material) =>
              html`<tr>
                <th scope="row">${material.name}</th>
                <td class="figure">
                  ${ledgerAmount(
                    onHand(this.book, itemOfMaterial(material), this.today),
                    material.unit,
                  )}
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
          >Record another delivery</fluent-button
        >
      </div>
    </div>`;
  }
}
customElements.define('pour-receive-done', ReceiveDoneStep);

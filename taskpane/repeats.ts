import '@fluentui/web-components/button.js';
import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { count } from '../src/domain/kernel/count.ts';
import type { Change } from '../src/workbook/port.ts';
import { changeForRepeats, type Repeat } from '../src/workbook/sharing/repeats.ts';
import { looks, noticeLooks } from './looks.ts';
import { liveNotice, type Notice } from './parts/notice.ts';
import type { Written } from './task/session.ts';
import { sentenceOfWritten } from './task/written.ts';

/** Lines that share an id, and the way to give each its own; no flow can run until they are told apart. */
export class RepeatsPart extends LitElement {
  static override styles = [looks, noticeLooks];
  static override properties = {
    repeats: { attribute: false },
    write: { attribute: false },
    notice: { state: true },
    isBusy: { state: true },
  };

  declare repeats: readonly Repeat[];
  declare write: (change: Change) => Promise<Written>;
  declare notice: Notice | undefined;
  declare isBusy: boolean;

  override render(): TemplateResult | typeof nothing {
    const { repeats } = this;
    if (repeats.length === 0) return nothing;
    return html`<section class="stack tight" aria-labelledby="repeats">
      <h3 id="repeats">Give each line its own id</h3>
      <p>
        Nothing but the id of the later line changes. The check then looks for what was written
        twice.
      </p>
      <ul class="stack tight">
        ${repeats.slice(0, MOST_SHOWN).map((repeat) => html`<li>${sentence(repeat)}</li>`)}
        ${
          repeats.length > MOST_SHOWN
            ? html`<li>And ${count(repeats.length - MOST_SHOWN, 'more line')}.</li>`
            : nothing
        }
      </ul>
      <div class="actions">
        <fluent-button
          id="tell-apart"
          ?disabled-focusable=${this.isBusy}
          @click=${() => {
            void this.tellApart();
          }}
          >${this.isBusy ? 'Writing…' : `Change ${count(repeats.length, 'id')}`}</fluent-button
        >
      </div>
      ${liveNotice(this.notice)}
    </section>`;
  }

  private async tellApart(): Promise<void> {
    if (this.isBusy) return;
    this.isBusy = true;
    const written = await this.write(changeForRepeats(this.repeats));
    this.isBusy = false;
    if (written.kind !== 'applied') this.notice = { kind: 'bad', text: sentenceOfWritten(written) };
  }
}
customElements.define('pour-repeats', RepeatsPart);

const MOST_SHOWN = 20;

const sentence = ({ table, id, newId, row, firstRow, isCopy }: Repeat): string =>
  `${table}, row ${String(row)}: ${id} becomes ${newId}. It ${isCopy ? 'says the same as' : 'differs from'} row ${String(firstRow)}.`;

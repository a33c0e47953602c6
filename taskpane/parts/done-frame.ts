import '@fluentui/web-components/button.js';
import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { ifDefined } from 'lit/directives/if-defined.js';
import type { Book } from '../../src/domain/book/book.ts';
import type { Day } from '../../src/domain/kernel/day.ts';
import { cardLooks, looks, noticeLooks } from '../looks.ts';
import { tellAny } from '../task/events.ts';
import { busyNews, liveNotice, type Notice } from './notice.ts';
import './undo-button.ts';

/** What stands in the workbook under the id that was recorded. */
export interface Done {
  readonly heading: 'Recorded' | 'Undone' | 'Not in the workbook';
  /** In a few words: what it is, or that it is no longer there. */
  readonly about: string;
  /** On the button that begins the next one. */
  readonly another: string;
  readonly content: TemplateResult | typeof nothing;
  /** What the button to undo it names; undefined where it can't be undone, or was. */
  readonly undo: string | undefined;
  /** What undoing it names, where that is not the id that was recorded. */
  readonly undoTarget?: string;
  /** What undoing it does, where it does not add opposite lines. */
  readonly undoMeans?: string;
}

/** The frame of a task's last step: read back from the workbook itself, news, undo, the next one. */
export abstract class DoneFrame extends LitElement {
  static override styles = [looks, cardLooks, noticeLooks];
  static override properties: PropertyDeclarations = {
    target: {},
    book: { attribute: false },
    today: { attribute: false },
    notice: { attribute: false },
    isBusy: { attribute: false },
  };

  /** Id of what was recorded. */
  declare target: string;
  declare book: Book;
  declare today: Day;
  declare notice: Notice | undefined;
  declare isBusy: boolean;

  protected abstract done(): Done;

  override render(): TemplateResult {
    const { heading, about, another, content, undo, undoTarget, undoMeans } = this.done();
    return html`<div class="stack">
      <div>
        <h2 tabindex="-1">${heading}</h2>
        <p class="quiet">${about}</p>
      </div>
      ${liveNotice(this.notice)} ${busyNews(this.isBusy)} ${content}
      <div class="actions">
        <fluent-button
          appearance="primary"
          id="another"
          @click=${() => {
            tellAny(this, 'task-another', undefined);
          }}
          >${another}</fluent-button
        >
      </div>
      ${
        undo === undefined
          ? nothing
          : html`<pour-undo-button
              target=${undoTarget ?? this.target}
              means=${ifDefined(undoMeans)}
              name=${undo}
              ?isBusy=${this.isBusy}
            ></pour-undo-button>`
      }
    </div>`;
  }
}

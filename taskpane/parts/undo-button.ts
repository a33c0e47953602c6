import '@fluentui/web-components/button.js';
import { html, LitElement } from 'lit';
import { tellAny } from '../task/events.ts';
import { looks } from '../looks.ts';

const OPPOSITE_LINES =
  'Stock goes back to what it was. The old lines stay; opposite lines are added.';

/**
 * Undoes what was recorded in two presses: the second says what will happen.
 * @fires pour-undo with the batch's id
 */
export class UndoButton extends LitElement {
  static override styles = looks;
  static override properties = {
    target: {},
    name: {},
    means: {},
    isBusy: { type: Boolean },
    isSmall: { type: Boolean },
    isAsking: { state: true },
  };

  /** Id of what to undo. */
  declare target: string;
  /** What undoing does, in a sentence or two. */
  declare means: string;
  /** What the button is for where several stand in a list. */
  declare name: string;
  declare isBusy: boolean;
  declare isSmall: boolean;
  declare isAsking: boolean;

  constructor() {
    super();
    this.target = '';
    this.name = '';
    this.means = OPPOSITE_LINES;
    this.isBusy = false;
    this.isSmall = false;
    this.isAsking = false;
  }

  override render() {
    if (!this.isAsking) {
      return html`<fluent-button
        id="undo"
        size=${this.isSmall ? 'small' : 'medium'}
        aria-label="Undo ${this.name}"
        ?disabled-focusable=${this.isBusy}
        @click=${() => {
          void this.ask(true);
        }}
        >Undo</fluent-button
      >`;
    }
    return html`<div class="stack tight" role="group" aria-labelledby="question">
      <p id="question" tabindex="-1">Undo ${this.name}? ${this.means}</p>
      <div class="actions">
        <fluent-button id="yes" ?disabled-focusable=${this.isBusy} @click=${this.confirm}
          >Yes, undo it</fluent-button
        >
        <fluent-button
          id="keep"
          appearance="subtle"
          @click=${() => {
            void this.ask(false);
          }}
          >Keep it</fluent-button
        >
      </div>
    </div>`;
  }

  private async ask(isAsking: boolean): Promise<void> {
    this.isAsking = isAsking;
    await this.updateComplete;
    // Not on a button: a key held down must not answer the question.
    this.renderRoot.querySelector<HTMLElement>(isAsking ? '#question' : '#undo')?.focus();
  }

  private confirm(): void {
    this.isAsking = false;
    tellAny(this, 'task-undo', this.target);
  }
}
customElements.define('pour-undo-button', UndoButton);

import '@fluentui/web-components/button.js';
import {
  html,
  LitElement,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import type { Result } from '../../src/domain/kernel/result.ts';
import { tellAny } from '../task/events.ts';
import { liveNotice, type Notice } from './notice.ts';

/**
 * The first step of a short task, as far as all are alike: what is missing is said once the maker asks
 * to go on, and the field to mend gets the focus.
 */
export abstract class EnterFrame extends LitElement {
  static override properties: PropertyDeclarations = {
    posting: { attribute: false },
    notice: { attribute: false },
    isAsked: { state: true },
  };

  /** What would be written, or what is missing. */
  declare posting: Result<unknown>;
  declare notice: Notice | undefined;
  /** Whether the maker asked to go on. */
  declare isAsked: boolean;

  constructor() {
    super();
    this.isAsked = false;
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('posting') && this.posting.ok) this.isAsked = false;
  }

  /** What is missing, the button to the preview, news. */
  protected wayOn(label: string): TemplateResult {
    const { posting } = this;
    const problem: Notice | undefined =
      this.isAsked && !posting.ok ? { kind: 'bad', text: posting.failure.sentence } : undefined;
    return html`${liveNotice(problem)}
      <div class="actions">
        <fluent-button appearance="primary" id="next" @click=${this.goOn}>${label}</fluent-button>
      </div>
      ${liveNotice(this.notice)}`;
  }

  private goOn(): void {
    this.isAsked = true;
    if (this.posting.ok) tellAny(this, 'task-step', 'preview');
    else this.renderRoot.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
  }
}

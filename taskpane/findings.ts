import '@fluentui/web-components/button.js';
import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import type { Change } from '../src/workbook/port.ts';
import type { Repeat } from '../src/workbook/sharing/repeats.ts';
import { linkLooks, placeLink } from './parts/place-link.ts';
import './repeats.ts';
import type { ToMend } from './read-workbook.ts';
import type { Written } from './task/session.ts';
import { tellAny } from './task/events.ts';
import { looks, noticeLooks } from './looks.ts';

/** In place of the flow: what to mend in the tables first, or why they can't be read. */
export class FindingsStep extends LitElement {
  static override styles = [
    looks,
    noticeLooks,
    linkLooks,
    css`
      li {
        padding: 8px 0;
        border-top: 1px solid var(--colorNeutralStroke2);
      }
    `,
  ];
  static override properties = {
    findings: { attribute: false },
    isUnreachable: { attribute: false },
    repeats: { attribute: false },
    write: { attribute: false },
  };

  declare findings: readonly ToMend[];
  /** The host itself did not answer. */
  declare isUnreachable: boolean;
  /** Lines that share an id, which can be told apart here. */
  declare repeats: readonly Repeat[];
  declare write: (change: Change) => Promise<Written>;

  override render() {
    return html`<div class="stack">
      <div>
        <h2 tabindex="-1">
          ${this.isUnreachable ? 'The workbook could not be read' : 'Mend this first'}
        </h2>
        <p class="quiet">
          ${
            this.isUnreachable
              ? 'What you typed here is kept.'
              : 'Until the tables are in order, any amount here could be wrong.'
          }
        </p>
      </div>
      <ul id="findings" role="list">
        ${this.findings.map((finding) => html`<li><span>${finding.sentence}</span> ${showButton(this, finding)}</li>`)}
      </ul>
      <pour-repeats .repeats=${this.repeats} .write=${this.write}></pour-repeats>
      <div class="actions">
        <fluent-button
          appearance="primary"
          id="again"
          @click=${() => {
            tellAny(this, 'task-check-again', undefined);
          }}
          >Check again</fluent-button
        >
      </div>
    </div>`;
  }
}
customElements.define('pour-findings', FindingsStep);

/** Leads to the cell that a finding speaks of. */
function showButton(from: HTMLElement, { at }: ToMend): TemplateResult | typeof nothing {
  return at === undefined ? nothing : placeLink(from, at.place, 'Show', at.words);
}

import '@fluentui/web-components/checkbox.js';
import { html, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';

/** A box to tick and what it stands for; the whole line can be pressed. */
export function tickLine(
  id: string,
  isTicked: boolean,
  label: unknown,
  onTicked: (isTicked: boolean) => void,
): TemplateResult {
  return html`<div class="check">
    <fluent-checkbox
      id=${id}
      size="large"
      .checked=${live(isTicked)}
      @change=${(event: Event) => {
        onTicked((event.target as HTMLInputElement).checked);
      }}
    ></fluent-checkbox>
    <label for=${id}>${label}</label>
  </div>`;
}

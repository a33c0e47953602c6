import { html, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';

/** A field for a day, as ISO text; "" while none is chosen. */
export interface DateField {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly onChosen: (iso: string) => void;
}

/** A labelled date. */
export function dateField({ id, label, value, onChosen }: DateField): TemplateResult {
  return html`<div class="field">
    <label for=${id}>${label}</label>
    <input
      id=${id}
      type="date"
      .value=${live(value)}
      @change=${(event: Event) => {
        onChosen((event.target as HTMLInputElement).value);
      }}
    />
  </div>`;
}

import { html, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { readDay } from '../../src/domain/kernel/day.ts';
import { day } from '../format.ts';

/** A field for a day, as ISO text; "" while none is chosen. */
export interface DateField {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly onChosen: (iso: string) => void;
}

/** A labelled date, with the day in words: browsers set day and month in the order of their own language. */
export function dateField({ id, label, value, onChosen }: DateField): TemplateResult {
  const chosen = readDay(value);
  return html`<div class="field">
    <label for=${id}>${label}</label>
    <input
      id=${id}
      type="date"
      .value=${live(value)}
      aria-describedby=${chosen === undefined ? nothing : `${id}-read`}
      @change=${(event: Event) => {
        onChosen((event.target as HTMLInputElement).value);
      }}
    />
    ${chosen === undefined ? nothing : html`<p id="${id}-read" class="small quiet">${day(chosen)}</p>`}
  </div>`;
}

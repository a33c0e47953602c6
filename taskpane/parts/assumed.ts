import { html, nothing, type TemplateResult } from 'lit';
import type { Assumption } from '../../src/domain/book/book.ts';
import { asRead } from '../as-read.ts';

/** What had to be assumed, folded away under a line; nothing where there is none. */
export function assumedList(
  title: string,
  assumptions: readonly Assumption[],
): TemplateResult | typeof nothing {
  if (assumptions.length === 0) return nothing;
  return html`<details class="small">
    <summary>${title}</summary>
    <ul>
      ${assumptions.map(({ sentence }) => html`<li>${asRead(sentence)}</li>`)}
    </ul>
  </details>`;
}

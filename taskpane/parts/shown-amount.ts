import { html, nothing, type TemplateResult } from 'lit';
import type { Exact } from '../../src/domain/kernel/exact.ts';
import { amount } from '../format.ts';

/** An amount as a maker reads it, with the exact one on hovering where they differ. */
export function shownAmount(quantity: Exact, unit: string): TemplateResult {
  const { text, exact } = amount(quantity, unit);
  return html`<span class="figure" title=${exact === undefined ? nothing : `${exact}, to be exact`}
    >${text}</span
  >`;
}

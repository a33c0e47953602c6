import { html, type TemplateResult } from 'lit';
import type { Shortage } from '../../src/domain/ledger/take-stock.ts';
import { shownAmount } from './shown-amount.ts';

/** What stock is short of: needed, on hand, short. */
export function shortageTable(shortages: readonly Shortage[]): TemplateResult {
  return html`<table class="small">
    <thead>
      <tr>
        <th scope="col">Item</th>
        <th scope="col">Needed</th>
        <th scope="col">On hand</th>
        <th scope="col">Short</th>
      </tr>
    </thead>
    <tbody>
      ${shortages.map(
        ({ item, needed, available, short }) =>
          html`<tr>
            <th scope="row">${item.name}</th>
            <td>${shownAmount(needed, item.unit)}</td>
            <td>${shownAmount(available, item.unit)}</td>
            <td><strong>${shownAmount(short, item.unit)}</strong></td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}

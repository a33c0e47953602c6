import { html, nothing, type TemplateResult } from 'lit';
import type { NewMove, StockChange } from '../../src/domain/ledger/posting.ts';
import { count } from '../../src/domain/kernel/count.ts';
import { ledgerAmount, money } from '../format.ts';

/** The lines to add to Moves, each as it will stand there. */
export function moveTable(moves: readonly NewMove[], currency: string): TemplateResult {
  return html`<table>
    <caption>
      ${count(moves.length, 'line')} for Moves
    </caption>
    <thead>
      <tr>
        <th scope="col">Reason and item</th>
        <th scope="col">Quantity</th>
        <th scope="col">Value</th>
      </tr>
    </thead>
    <tbody>
      ${moves.map(
        ({ reason, item, quantity, lot, value, note }) =>
          html`<tr>
            <th scope="row">
              ${item.name}<br />
              <span class="small quiet"
                >${reason}${lot === '' ? nothing : `, lot ${lot}`}${
                  note === '' ? nothing : `. ${note}`
                }</span
              >
            </th>
            <td class="figure">${ledgerAmount(quantity, item.unit)}</td>
            <td class="figure">${money(value, currency)}</td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}

/** Stock of each item that moves, before and after. */
export function stockTable(changes: readonly StockChange[]): TemplateResult {
  return html`<table>
    <caption>
      Stock
    </caption>
    <thead>
      <tr>
        <th scope="col">Item</th>
        <th scope="col">Before</th>
        <th scope="col">After</th>
      </tr>
    </thead>
    <tbody>
      ${changes.map(
        ({ item, before, after }) =>
          html`<tr>
            <th scope="row">${item.name}</th>
            <td class="figure">${ledgerAmount(before, item.unit)}</td>
            <td class="figure">${ledgerAmount(after, item.unit)}</td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}

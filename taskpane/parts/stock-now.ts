import { html, type TemplateResult } from 'lit';
import type { Book, Item } from '../../src/domain/book/book.ts';
import type { Day } from '../../src/domain/kernel/day.ts';
import { onHand } from '../../src/domain/stock/on-hand.ts';
import { ledgerAmount } from '../format.ts';

/** What is on hand of items, each once. */
export function stockNow(book: Book, items: readonly Item[], today: Day): TemplateResult {
  const once = new Map(items.map((item) => [item.name, item]));
  return html`<table>
    <caption>
      In stock now
    </caption>
    <tbody>
      ${[...once.values()].map(
        (item) =>
          html`<tr>
            <th scope="row">${item.name}</th>
            <td class="figure">${ledgerAmount(onHand(book, item, today), item.unit)}</td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}

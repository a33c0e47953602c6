import { html, nothing, type TemplateResult } from 'lit';
import type { MoveLine, NewBatch, StockChange } from '../../src/domain/ledger/posting.ts';
import { count } from '../../src/domain/kernel/count.ts';
import { asRead } from '../as-read.ts';
import { day, ledgerAmount, moneyText } from '../format.ts';

/** The lines to add to LedgerLines, each as it will stand there. */
export const moveTable = (moves: readonly MoveLine[], currency: string): TemplateResult =>
  ledgerTable(
    `${count(moves.length, 'line')} for LedgerLines`,
    ['Reason and item', 'Quantity', 'Value'],
    moves.map(({ reason, item, quantity, lot, value, note }) => ({
      name: item.name,
      more: `${reason}${lot === '' ? '' : `, lot ${lot}`}${note === '' ? '' : `. ${note}`}`,
      figures: [
        ledgerAmount(quantity, item.unit),
        value === undefined ? 'not known' : moneyText(value, currency),
      ],
    })),
  );

/** The lines to add to Batches, each as it will stand there. */
export const batchTable = (batches: readonly NewBatch[]): TemplateResult =>
  ledgerTable(
    `${count(batches.length, 'line')} for Batches`,
    ['Batch', 'Poured', 'Good'],
    batches.map(({ batch, design, poured, good, note }) => ({
      name: design,
      more: `${batch}. ${note}`,
      figures: [day(poured), String(good)],
    })),
  );

/** Stock of each item that moves, before and after. */
export const stockTable = (changes: readonly StockChange[]): TemplateResult =>
  ledgerTable(
    'Stock',
    ['Item', 'Before', 'After'],
    changes.map(({ item, before, after }) => ({
      name: item.name,
      more: '',
      figures: [ledgerAmount(before, item.unit), ledgerAmount(after, item.unit)],
    })),
  );

interface Line {
  readonly name: string;
  /** In small print under the name; "" for nothing. */
  readonly more: string;
  readonly figures: readonly string[];
}

function ledgerTable(
  caption: string,
  heads: readonly string[],
  lines: readonly Line[],
): TemplateResult {
  return html`<table>
    <caption>
      ${asRead(caption)}
    </caption>
    <thead>
      <tr>
        ${heads.map((head) => html`<th scope="col">${head}</th>`)}
      </tr>
    </thead>
    <tbody>
      ${lines.map(
        ({ name, more, figures }) =>
          html`<tr>
            <th scope="row">
              ${name}${more === '' ? nothing : html`<br /><span class="small quiet">${more}</span>`}
            </th>
            ${figures.map((figure) => html`<td class="figure">${figure}</td>`)}
          </tr>`,
      )}
    </tbody>
  </table>`;
}

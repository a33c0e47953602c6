import { html, type TemplateResult } from 'lit';
import type { NewBatch } from '../../../src/domain/ledger/posting.ts';
import { count } from '../../../src/domain/kernel/count.ts';
import { day } from '../../format.ts';

/** The lines to add to Batches, each as it will stand there. */
export function batchTable(batches: readonly NewBatch[]): TemplateResult {
  return html`<table>
    <caption>
      ${count(batches.length, 'line')} for Batches
    </caption>
    <thead>
      <tr>
        <th scope="col">Batch</th>
        <th scope="col">Poured</th>
        <th scope="col">Good</th>
      </tr>
    </thead>
    <tbody>
      ${batches.map(
        ({ batch, design, poured, good, note }) =>
          html`<tr>
            <th scope="row">${design}<br /><span class="small quiet">${batch}. ${note}</span></th>
            <td class="figure">${day(poured)}</td>
            <td class="figure">${good}</td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}

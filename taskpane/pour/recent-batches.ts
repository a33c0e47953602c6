import { html, nothing, type TemplateResult } from 'lit';
import type { Batch, Book } from '../../src/domain/book/book.ts';
import { batchStates } from '../../src/domain/book/words.ts';
import { nameKey } from '../../src/domain/kernel/names.ts';
import { count, day } from '../format.ts';
import '../parts/undo-button.ts';

const MOST_SHOWN = 5;

/** The last few batches, newest first, with a way to undo each. */
export function recentBatches(book: Book, isBusy: boolean): TemplateResult | typeof nothing {
  const recent = [...book.batches.values()]
    .reverse()
    .sort((a, b) => Math.floor(b.poured) - Math.floor(a.poured))
    .slice(0, MOST_SHOWN);
  if (recent.length === 0) return nothing;
  return html`<section class="stack tight" aria-labelledby="recent">
    <h3 id="recent">Last batches</h3>
    <ul class="stack tight">
      ${recent.map((batch) => recentBatch(batch, isBusy))}
    </ul>
  </section>`;
}

function recentBatch(batch: Batch, isBusy: boolean): TemplateResult {
  const isUndone = isUndoneBatch(batch);
  return html`<li class="recent">
    <div>
      <p>${batch.design.name}</p>
      <p class="small quiet">
        ${day(batch.poured)} · ${count(batch.good ?? batch.bars, 'bar')} ·
        <span class="id">${batch.batch}</span>
        ${isUndone ? html`· <strong>undone</strong>` : nothing}
      </p>
    </div>
    ${
      isUndone
        ? nothing
        : html`<pour-undo-button
            target=${batch.batch}
            name="${batch.design.name}, ${batch.batch}"
            isSmall
            ?isBusy=${isBusy}
          ></pour-undo-button>`
    }
  </li>`;
}

/** Whether a batch was taken back, as its State says. */
export const isUndoneBatch = ({ state }: Batch): boolean =>
  nameKey(state) === nameKey(batchStates.undone);

import { html, nothing, type TemplateResult } from 'lit';
import { asRead } from '../../as-read.ts';
import type { Batch } from '../../../src/domain/book/book.ts';
import { count } from '../../../src/domain/kernel/count.ts';
import type { PostBatchAnswer } from '../../../src/domain/ledger/settle.ts';
import type { BatchPosting } from '../../../src/domain/ledger/posting.ts';
import type { Shortage } from '../../../src/domain/ledger/take-stock.ts';
import { type Draft, tell } from '../draft.ts';
import { day, ledgerAmount, moneyText, plain } from '../../format.ts';
import { moveTable, stockTable } from '../../parts/ledger-tables.ts';
import { noticeBar } from '../../parts/notice.ts';
import { PreviewFrame, type PreviewWords } from '../../parts/preview-frame.ts';
import { shortageTable } from '../../parts/shortage-table.ts';
import { tickLine } from '../../parts/tick-line.ts';
import { pastDateNotice } from '../past-date.ts';
import { alikeNotice } from '../poured-alike.ts';

/** Fourth step: exactly what will be written, or what stands in the way. */
export class PreviewStep extends PreviewFrame<PostBatchAnswer> {
  static override properties = {
    draft: { attribute: false },
    shortages: { attribute: false },
    alike: { attribute: false },
    currency: { attribute: false },
  };

  declare draft: Draft;
  /** All that stock is short of, counts said to be off included. */
  declare shortages: readonly Shortage[];
  /** Batches recorded already that look the same. */
  declare alike: readonly Batch[];
  declare currency: string;

  protected override words(): PreviewWords {
    return {
      heading: 'Look it over',
      record: 'Record this pour',
      id: this.draft.batch,
      back: 'outcome',
    };
  }

  protected override canRecord({ kind }: PostBatchAnswer): boolean {
    return kind === 'ready';
  }

  protected override lines(answer: PostBatchAnswer): TemplateResult {
    if (answer.kind === 'short') {
      return html`${noticeBar(
        {
          kind: 'warn',
          text: `Stock is short of ${count(answer.shortages.length, 'item')}, so this can’t be recorded yet.`,
        },
        shortageTable(answer.shortages),
      )}
      ${this.countIsOff()}`;
    }
    return html`${alikeNotice(this.alike)} ${pastDateNotice(answer.pastDate)} ${this.countIsOff()}
    ${this.ready(answer.posting)}`;
  }

  /** A choice for each item: the shelf had it, the ledger didn't know. */
  private countIsOff() {
    if (this.shortages.length === 0) return nothing;
    return html`<section class="stack tight" aria-labelledby="off">
      <h3 id="off">Did you have it after all?</h3>
      <p class="small quiet">
        Tick what was on your shelf though the count says otherwise. What was missing is then added
        as “counted” first. Else go back and change what you used, or enter the purchase in Lots.
      </p>
      ${this.shortages.map(({ item, short }, index) =>
        tickLine(
          `off-${String(index)}`,
          this.draft.countIsOff.includes(item.name),
          html`My count of ${item.name} is off: I did have the ${ledgerAmount(short, item.unit)}`,
          (isOff) => {
            const others = this.draft.countIsOff.filter((name) => name !== item.name);
            tell(this, 'task-told', { countIsOff: isOff ? [...others, item.name] : others });
          },
        ),
      )}
    </section>`;
  }

  private ready(posting: BatchPosting): TemplateResult {
    const { batch, moves, changes, writtenOff } = posting;
    const lines: [string, string][] = [
      ['Batch', batch.batch],
      ['Poured', day(batch.poured)],
      ['Design', batch.design],
      ['Bars started', plain(batch.bars)],
      ['Good', String(batch.good)],
      ['Seconds', String(batch.seconds)],
      ['Lost', String(batch.lost ?? 0)],
      ['Minutes', batch.minutes === undefined ? '' : plain(batch.minutes)],
      ['Material cost', moneyText(batch.materialCost, this.currency)],
      [
        'Cost per bar',
        batch.costPerBar === undefined ? 'no good bar' : moneyText(batch.costPerBar, this.currency),
      ],
      ['Ready on', batch.readyOn === undefined ? '' : day(batch.readyOn)],
      ['State', batch.state],
      ...[['By', batch.by] as [string, string], ['Note', batch.note] as [string, string]].filter(
        ([, text]) => text !== '',
      ),
    ];
    return html`
      ${
        writtenOff.isZero()
          ? nothing
          : noticeBar({
              kind: 'warn',
              text: `No bar came out good, so ${moneyText(writtenOff, this.currency)} of material is written off.`,
            })
      }
      <section class="stack tight" aria-labelledby="line">
        <h3 id="line">${asRead('One line for Batches')}</h3>
        <dl>
          ${lines.map(
            ([name, text]) =>
              html`<dt>${name}</dt>
                <dd>${text}</dd>`,
          )}
        </dl>
      </section>
      ${moveTable(moves, this.currency)} ${stockTable(changes)}
    `;
  }
}
customElements.define('pour-preview', PreviewStep);

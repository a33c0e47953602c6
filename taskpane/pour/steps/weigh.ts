import '@fluentui/web-components/button.js';
import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import type { Book } from '../../../src/domain/book/book.ts';
import { count } from '../../../src/domain/kernel/count.ts';
import type { Day } from '../../../src/domain/kernel/day.ts';
import type { Result } from '../../../src/domain/kernel/result.ts';
import { compositionOf } from '../../../src/domain/label/composition.ts';
import { moldFit, overfullSentence } from '../../../src/domain/label/mold-check.ts';
import type { PostBatchAnswer } from '../../../src/domain/ledger/settle.ts';
import { barsAllowed } from '../capacity.ts';
import { cautionsFor } from '../cautions.ts';
import { typedAt, typedWith } from '../../task/typed.ts';
import { type Draft, tell } from '../draft.ts';
import { day } from '../../format.ts';
import { cardLooks, fieldLooks, looks, noticeLooks } from '../../looks.ts';
import { assumedList } from '../../parts/assumed.ts';
import { noticeBar } from '../../parts/notice.ts';
import { shortageTable } from '../../parts/shortage-table.ts';
import { shownAmount } from '../../parts/shown-amount.ts';
import { StayAwake } from '../../parts/stay-awake.ts';
import { tickLine } from '../../parts/tick-line.ts';
import { pastDateNotice } from '../past-date.ts';
import type { PlannedPour } from '../pour-of-draft.ts';
import { amountOf, cardsOf, type WeighCard, type WeighLine } from '../weigh-cards.ts';

/** Second step: what to weigh out, in pouring order, with a tick for each line. */
export class WeighStep extends LitElement {
  static override styles = [
    looks,
    fieldLooks,
    cardLooks,
    noticeLooks,
    css`
      .line {
        display: flex;
        align-items: baseline;
        justify-content: space-between;
        gap: 12px;
      }
      .line .amount {
        max-width: 60%;
        text-align: end;
        font-weight: var(--fontWeightSemibold);
      }
      .done .name {
        color: var(--colorNeutralForeground3);
      }
      .card li + li {
        border-top: 1px solid var(--colorNeutralStroke2);
      }
      .card > .lines {
        padding: 2px 12px;
      }
      @media (max-width: 760px), (pointer: coarse) {
        .line {
          min-height: 48px;
          align-items: center;
          font-size: var(--fontSizeBase500);
          line-height: var(--lineHeightBase500);
        }
      }
      .cautions li {
        padding-left: 14px;
        text-indent: -14px;
      }
      .cautions li::before {
        content: '•';
        display: inline-block;
        width: 14px;
        text-indent: 0;
      }
    `,
  ];
  static override properties = {
    book: { attribute: false },
    draft: { attribute: false },
    planned: { attribute: false },
    stock: { attribute: false },
    today: { attribute: false },
  };

  declare book: Book;
  declare draft: Draft;
  declare planned: PlannedPour;
  /** Whether stock is enough for the pour as planned. */
  declare stock: Result<PostBatchAnswer>;
  declare today: Day;

  constructor() {
    super();
    new StayAwake(this);
  }

  override render() {
    const { plan, design, poured } = this.planned;
    const cards = cardsOf(plan);
    const lines = cards.flatMap((card) => card.lines);
    const ticked = lines.filter((line) => this.isTicked(line)).length;
    const started = Number(plan.barsToStart);
    return html`<div class="stack">
      <div>
        <h2 tabindex="-1">Weigh out</h2>
        <p>
          ${design.name},
          ${count(this.planned.bars, 'bar')}${
            started > this.planned.bars ? ` (start ${String(started)})` : ''
          },
          ${day(poured)}
        </p>
      </div>
      ${this.stockNotice()} ${this.stock.ok ? pastDateNotice(this.stock.value.pastDate) : nothing}
      ${this.overfull()} ${this.cautions()}
      <ol class="stack">
        ${cards.map((card, index) => html`<li>${this.card(card, index + 1)}</li>`)}
      </ol>
      ${this.assumptions()}
      <p role="status" class="quiet">${ticked} of ${count(lines.length, 'line')} ticked.</p>
      <div class="actions">
        <fluent-button
          appearance="primary"
          id="next"
          @click=${() => {
            tell(this, 'task-step', 'outcome');
          }}
          >Next: what came out</fluent-button
        >
        <fluent-button
          id="back"
          appearance="subtle"
          @click=${() => {
            tell(this, 'task-step', 'choose');
          }}
          >Back</fluent-button
        >
      </div>
    </div>`;
  }

  private stockNotice() {
    if (!this.stock.ok) return noticeBar({ kind: 'warn', text: this.stock.failure.sentence });
    if (this.stock.value.kind === 'ready') {
      return noticeBar({ kind: 'good', text: 'Stock is enough for all of it.' });
    }
    const { shortages } = this.stock.value;
    const possible = barsAllowed(this.book, this.planned.design, this.today) ?? 0;
    const isFewer = possible > 0 && possible < this.planned.bars;
    return noticeBar(
      {
        kind: 'warn',
        text: `Before you melt: stock is short of ${count(shortages.length, 'item')}.`,
      },
      html`${shortageTable(shortages)}
        <p>
          Buy or borrow
          it${isFewer ? `, or go back and pour ${count(possible, 'bar')}, which stock allows` : ''}.
          If it is on your shelf after all, carry on: you can say so before recording.
        </p>`,
    );
  }

  /** Said before anything is melted: afterwards the soap has nowhere to go. */
  private overfull() {
    const { design } = this.planned;
    const composition = compositionOf(this.book, design);
    const fit = composition.ok ? moldFit(design, composition.value) : undefined;
    return fit?.isOver === true
      ? noticeBar({ kind: 'warn', text: overfullSentence(fit) })
      : nothing;
  }

  private cautions() {
    const cautions = cautionsFor(this.planned.plan);
    if (cautions.length === 0) return nothing;
    return html`<section class="notice" aria-label="Take care">
      <h3 class="small">Take care</h3>
      <ul class="cautions small">
        ${cautions.map((caution) => html`<li>${caution}</li>`)}
      </ul>
    </section>`;
  }

  private card(card: WeighCard, number: number): TemplateResult {
    return html`<section class="card" aria-labelledby="card-${number}">
      <header>
        <div class="spread">
          <h3 id="card-${number}">${number}. ${card.title}</h3>
          ${
            card.meltG === undefined || card.meltG.isZero()
              ? nothing
              : html`<p>melt <strong>${shownAmount(card.meltG, 'g')}</strong></p>`
          }
        </div>
        ${card.uses.map((use) => html`<p class="small quiet">${use}</p>`)}
      </header>
      ${
        card.lines.length === 0
          ? nothing
          : html`<ul class="lines">
              ${card.lines.map((line, index) => this.line(line, `${number}-${index}`))}
            </ul>`
      }
    </section>`;
  }

  private line(line: WeighLine, at: string): TemplateResult {
    const isTicked = this.isTicked(line);
    const before = typedAt(this.draft.ticks, line.key);
    const hint = before === undefined || isTicked ? line.hint : `changed: you ticked ${before}`;
    const label = html`<span class="line">
      <span class="name"
        >${line.name}${hint === '' ? nothing : html`<br /><span class="small quiet">${hint}</span>`}
      </span>
      <span class="amount">${amountOf(line)}</span>
    </span>`;
    return html`<li class=${isTicked ? 'done' : ''}>
      ${tickLine(`tick-${at}`, isTicked, label, (now) => {
        const shown = now ? amountOf(line) : undefined;
        tell(this, 'task-told', { ticks: typedWith(this.draft.ticks, line.key, shown) });
      })}
    </li>`;
  }

  /** A tick holds for the amount it was set at: when the plan changes, the line is to be weighed anew. */
  private isTicked(line: WeighLine): boolean {
    return typedAt(this.draft.ticks, line.key) === amountOf(line);
  }

  private assumptions() {
    const names = cardsOf(this.planned.plan).flatMap(({ lines }) => lines.map(({ name }) => name));
    const used = this.book.assumptions.filter(
      ({ kind, about }) => kind === 'density' && names.includes(about),
    );
    return assumedList('Assumed, since the workbook doesn’t say', used);
  }
}
customElements.define('pour-weigh', WeighStep);

import '@fluentui/web-components/button.js';
import { html, LitElement, nothing, type PropertyValues } from 'lit';
import type { Book } from '../../../src/domain/book/book.ts';
import { findDesign } from '../../../src/domain/book/find.ts';
import { count } from '../../../src/domain/kernel/count.ts';
import type { Day } from '../../../src/domain/kernel/day.ts';
import { compareNames } from '../../../src/domain/kernel/names.ts';
import type { Result } from '../../../src/domain/kernel/result.ts';
import { barsAllowed } from '../capacity.ts';
import { type Draft, tell } from '../draft.ts';
import { fieldLooks, looks, noticeLooks } from '../../looks.ts';
import { assumedList } from '../../parts/assumed.ts';
import { dateField } from '../../parts/date-field.ts';
import { liveNotice, type Notice } from '../../parts/notice.ts';
import { firstSteps, firstStepsLooks } from '../../parts/first-steps.ts';
import { numberField } from '../../parts/number-field.ts';
import { linkLooks } from '../../parts/place-link.ts';
import { recentList, recentLooks } from '../../parts/recent-list.ts';
import { choicesOf, selectField } from '../../parts/select-field.ts';
import { recentBatches } from '../recent-batches.ts';
import { tickLine } from '../../parts/tick-line.ts';
import { hasLeftovers, type PlannedPour } from '../pour-of-draft.ts';
import { readWhole } from '../../typed-number.ts';

/** First step: which design, how many bars, when, and whether leftovers are used up. */
export class ChooseStep extends LitElement {
  static override styles = [
    looks,
    fieldLooks,
    noticeLooks,
    recentLooks,
    linkLooks,
    firstStepsLooks,
  ];
  static override properties = {
    book: { attribute: false },
    draft: { attribute: false },
    planned: { attribute: false },
    today: { attribute: false },
    notice: { attribute: false },
    isBusy: { attribute: false },
    isAsked: { state: true },
  };

  declare book: Book;
  declare draft: Draft;
  declare planned: Result<PlannedPour>;
  declare today: Day;
  declare notice: Notice | undefined;
  declare isBusy: boolean;
  /** Whether the maker asked to go on, so that what is missing is said. */
  declare isAsked: boolean;

  constructor() {
    super();
    this.isAsked = false;
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('planned') && this.planned.ok) this.isAsked = false;
  }

  override render() {
    if ([...this.book.designs.values()].every(({ layers }) => layers.length === 0)) {
      return html`<div class="stack">
        <h2 tabindex="-1">What will you pour?</h2>
        ${firstSteps(this, this.book)}
      </div>`;
    }
    const problem = this.problem;
    return html`<div class="stack">
      <h2 tabindex="-1">What will you pour?</h2>
      ${this.designField()} ${this.amounts()} ${this.leftovers()}
      ${liveNotice(problem === undefined ? undefined : { kind: 'bad', text: problem })}
      <div class="actions">
        <fluent-button appearance="primary" id="next" @click=${this.goOn}>Weigh out</fluent-button>
      </div>
      ${liveNotice(this.notice)}
      ${assumedList(
        'Settings to look at',
        this.book.assumptions.filter(({ kind }) => kind === 'setting'),
      )}
      ${recentList('Last batches', recentBatches(this.book), this.isBusy)}
    </div>`;
  }

  /** A design that has gone is said at once; what is only blank yet, when the maker wants to go on. */
  private get problem(): string | undefined {
    if (this.planned.ok) return undefined;
    const isGone = this.draft.design !== '' && !findDesign(this.book, this.draft.design).ok;
    return isGone || this.isAsked || this.draft.step !== 'choose'
      ? this.planned.failure.sentence
      : undefined;
  }

  private designField() {
    const names = [...this.book.designs.values()].map(({ name }) => name).sort(compareNames);
    return selectField(
      {
        id: 'design',
        label: 'Design',
        value: this.draft.design,
        ask: 'Choose a design',
        choices: choicesOf(names),
        onChosen: (design) => {
          this.tellChoice({ design });
        },
      },
      this.capacity(),
    );
  }

  private capacity() {
    const design = findDesign(this.book, this.draft.design);
    const bars = design.ok ? barsAllowed(this.book, design.value, this.today) : undefined;
    return bars === undefined
      ? nothing
      : html`<p class="small quiet">Stock is enough for ${count(bars, 'bar')}.</p>`;
  }

  private amounts() {
    const { bars, poured } = this.draft;
    const read = bars === '' ? undefined : readWhole(bars, 'Good bars wanted', 1);
    return html`<div class="row">
      ${numberField({
        id: 'bars',
        label: 'Good bars wanted',
        value: bars,
        whole: true,
        error: read?.ok === false ? read.failure.sentence : undefined,
        onTyped: (text) => {
          this.tellChoice({ bars: text });
        },
      })}
      ${dateField({
        id: 'poured',
        label: 'Date poured',
        value: poured,
        onChosen: (iso) => {
          this.tellChoice({ poured: iso });
        },
      })}
    </div>`;
  }

  private leftovers() {
    const design = findDesign(this.book, this.draft.design);
    if (!design.ok) return nothing;
    const hasAny = hasLeftovers(this.book, design.value, this.today);
    if (!hasAny) {
      return html`<p class="small quiet">
        No leftover soap or spare tiles of its colours on hand.
      </p>`;
    }
    return tickLine(
      'leftovers',
      this.draft.useLeftovers ?? hasAny,
      'Use leftover soap and spare tiles',
      (useLeftovers) => {
        this.tellChoice({ useLeftovers });
      },
    );
  }

  private tellChoice(told: Partial<Draft>): void {
    // A kept draft may stand at a later step; choosing anew begins here.
    tell(this, 'task-told', { ...told, step: 'choose' });
  }

  private goOn(): void {
    this.isAsked = true;
    if (this.planned.ok) tell(this, 'task-step', 'weigh');
    else {
      const { design, bars } = this.draft;
      const isBarsGood = readWhole(bars, '', 1).ok;
      const place = !findDesign(this.book, design).ok ? 'design' : isBarsGood ? 'poured' : 'bars';
      this.renderRoot.querySelector<HTMLElement>(`#${place}`)?.focus();
    }
  }
}
customElements.define('pour-choose', ChooseStep);

import '@fluentui/web-components/button.js';
import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { count } from '../../../src/domain/kernel/count.ts';
import type { Measure } from '../../../src/domain/measure/units.ts';
import type { Result } from '../../../src/domain/kernel/result.ts';
import { addedFor } from '../../../src/domain/ledger/consumption.ts';
import { type Typed, typedAt, typedWith } from '../../task/typed.ts';
import { type Draft, tell } from '../draft.ts';
import { plain, rounded } from '../../format.ts';
import { cardLooks, fieldLooks, looks, noticeLooks } from '../../looks.ts';
import { liveNotice } from '../../parts/notice.ts';
import { numberField } from '../../parts/number-field.ts';
import {
  leftoversOf,
  plannedMinutes,
  type PlannedPour,
  sparesOf,
  untoldBars,
} from '../pour-of-draft.ts';
import { minutes as inMinutes, quantityIn, readTyped, readWhole } from '../../typed-number.ts';
import { cardsOf, type WeighCard } from '../weigh-cards.ts';

/** Third step, after demolding: what came out, prefilled from the plan. */
export class OutcomeStep extends LitElement {
  static override styles = [looks, fieldLooks, cardLooks, noticeLooks];
  static override properties = {
    draft: { attribute: false },
    planned: { attribute: false },
    checked: { attribute: false },
    isAsked: { state: true },
  };

  declare draft: Draft;
  declare planned: PlannedPour;
  /** Whether the figures make sense together, and what is wrong with them if not. */
  declare checked: Result<unknown>;
  declare isAsked: boolean;

  constructor() {
    super();
    this.isAsked = false;
  }

  override render() {
    const { plan } = this.planned;
    const problem = this.isAsked && !this.checked.ok ? this.checked.failure.sentence : undefined;
    return html`<div class="stack">
      <div>
        <h2 tabindex="-1">What came out?</h2>
        <p class="quiet">Filled in as planned. Change what was different.</p>
      </div>
      ${this.bars()} ${this.weighed(cardsOf({ ...plan, added: addedFor(plan, this.lost) }))}
      ${this.counts('Spare tiles counted', 'spares', sparesOf(plan), 'each')}
      ${this.counts('Leftover soap weighed', 'leftoverG', leftoversOf(plan), 'g')}
      <div class="field">
        <label for="note">Note (if you like)</label>
        <input
          id="note"
          autocomplete="off"
          maxlength="300"
          .value=${live(this.draft.note)}
          @input=${(event: InputEvent) => {
            tell(this, 'task-told', { note: (event.target as HTMLInputElement).value });
          }}
        />
      </div>
      ${liveNotice(problem === undefined ? undefined : { kind: 'bad', text: problem })}
      <div class="actions">
        <fluent-button appearance="primary" id="next" @click=${this.goOn}
          >See what will be written</fluent-button
        >
        <fluent-button
          id="back"
          appearance="subtle"
          @click=${() => {
            tell(this, 'task-step', 'weigh');
          }}
          >Back</fluent-button
        >
      </div>
    </div>`;
  }

  /** Bars told to be lost; packaging is planned for the others. */
  private get lost(): number {
    const read = readWhole(this.draft.lost, '', 0);
    return read.ok ? Math.min(read.value, this.planned.plan.barsToStart.toNumber()) : 0;
  }

  private bars() {
    const { plan, bars } = this.planned;
    const { good, seconds, lost, minutes } = this.draft;
    const untold = untoldBars(this.draft, this.planned) ?? 0;
    const isUntold = untold > 0;
    const whole = (text: string, what: string) => errorOf(text, () => readWhole(text, what, 0));
    return html`<div class="stack tight">
      <p class="quiet">
        ${count(plan.barsToStart, 'bar')}
        started.${isUntold ? html` <strong>${untold} not told of yet.</strong>` : nothing}
      </p>
      <div class="row">
        ${numberField({
          id: 'good',
          label: 'Good bars',
          value: good === '' ? String(bars) : good,
          whole: true,
          error: whole(good, 'Good bars'),
          onTyped: (text) => {
            tell(this, 'task-told', { good: orBlank(text) });
          },
        })}
        ${numberField({
          id: 'seconds',
          label: 'Seconds',
          value: seconds === '' ? '0' : seconds,
          whole: true,
          error: whole(seconds, 'Seconds'),
          onTyped: (text) => {
            tell(this, 'task-told', { seconds: orBlank(text) });
          },
        })}
        ${numberField({
          id: 'lost',
          label: 'Lost',
          // Blank while bars are not told of: 0 would be a guess.
          value: lost === '' && !isUntold ? '0' : lost,
          whole: true,
          error:
            isUntold && this.isAsked
              ? `${count(untold, 'bar is', 'bars are')} not told of.`
              : whole(lost, 'Lost'),
          onTyped: (text) => {
            tell(this, 'task-told', { lost: orBlank(text) });
          },
        })}
        ${numberField({
          id: 'minutes',
          label: 'Minutes',
          value: minutes === '' ? rounded(plannedMinutes(this.planned), 'min') : minutes,
          amountOf: inMinutes,
          error: errorOf(minutes, () => readTyped(minutes, 'Minutes', inMinutes)),
          onTyped: (text) => {
            tell(this, 'task-told', { minutes: orBlank(text) });
          },
        })}
      </div>
      <p class="small quiet">
        Seconds: bars not good enough for full price. They don’t go in stock. Lost: bars that came
        to nothing. Packaging is taken for good bars and seconds only.
      </p>
    </div>`;
  }

  private weighed(cards: readonly WeighCard[]): TemplateResult {
    const lines = cards.flatMap((card) => card.lines).filter(({ canDiffer }) => canDiffer);
    const changed = lines.filter(
      ({ key }) => typedAt(this.draft.weighed, key) !== undefined,
    ).length;
    return html`<details>
      <summary>
        ${
          changed === 0
            ? 'Weighed as planned. Change a line'
            : `${count(changed, 'line')} weighed differently`
        }
      </summary>
      <div class="stack">
        ${cards.map((card, number) => {
          const some = card.lines.filter(({ canDiffer }) => canDiffer);
          if (some.length === 0) return nothing;
          return html`<section class="stack tight" aria-labelledby="of-${number}">
            <h3 id="of-${number}">${card.title}</h3>
            ${some.map((line, index) =>
              this.figure('weighed', `weighed-${number}-${index}`, {
                key: line.key,
                label: line.name,
                unit: line.unit,
                planned: plain(line.amount),
              }),
            )}
          </section>`;
        })}
      </div>
    </details>`;
  }

  private counts(
    title: string,
    group: 'spares' | 'leftoverG',
    expected: ReturnType<typeof sparesOf>,
    unit: Measure,
  ) {
    if (expected.length === 0) return nothing;
    return html`<section class="stack tight" aria-labelledby=${group}>
      <h3 id=${group}>${title}</h3>
      ${expected.map(({ name, planned }, index) =>
        this.figure(group, `${group}-${String(index)}`, {
          key: name,
          label: name,
          unit,
          planned: plain(planned),
        }),
      )}
    </section>`;
  }

  private figure(
    group: 'weighed' | 'spares' | 'leftoverG',
    id: string,
    figure: { key: string; label: string; unit: Measure; planned: string },
  ): TemplateResult {
    const typed = typedAt(this.draft[group], figure.key);
    const differs = typed !== undefined;
    const amountOf = quantityIn(figure.unit);
    return numberField({
      id,
      label: figure.label,
      unit: figure.unit === 'each' ? 'pieces' : figure.unit,
      value: typed ?? figure.planned,
      amountOf,
      isBeside: true,
      error: differs ? errorOf(typed, () => readTyped(typed, figure.label, amountOf)) : undefined,
      ...(differs ? { hint: `planned: ${figure.planned}` } : {}),
      onTyped: (text) => {
        const told = text.trim() === figure.planned ? undefined : text;
        const next: Typed = typedWith(this.draft[group], figure.key, told);
        tell(this, 'task-told', { [group]: next });
      },
    });
  }

  private goOn(): void {
    this.isAsked = true;
    if (this.checked.ok) tell(this, 'task-step', 'preview');
    else void this.toMend();
  }

  /** What is not told of yet is marked only once it was asked for. */
  private async toMend(): Promise<void> {
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
  }
}
customElements.define('pour-outcome', OutcomeStep);

/** A field blanked on purpose is not the same as one never touched, which shows the plan. */
const orBlank = (text: string): string => (text === '' ? ' ' : text);

function errorOf(typed: string, read: () => Result<unknown>): string | undefined {
  if (typed.trim() === '') return undefined;
  const value = read();
  return value.ok ? undefined : value.failure.sentence;
}

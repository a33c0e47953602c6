import { css, html, LitElement, type PropertyValues, type TemplateResult } from 'lit';
import type { Result } from '../src/domain/kernel/result.ts';
import { postBatch } from '../src/domain/ledger/post-batch.ts';
import type { HostPort } from '../src/workbook/port.ts';
import type { Step } from './draft.ts';
import type { PaneEvents } from './events.ts';
import { Flow } from './flow.ts';
import { looks } from './looks.ts';
import { stepBar, stepBarLooks } from './parts/step-bar.ts';
import { planOfDraft, type PlannedPour, pourAsPlanned } from './pour-of-draft.ts';
import { postingOf, shortagesOf } from './record.ts';
import type { BookState } from './session.ts';
import './steps/choose.ts';
import './steps/done.ts';
import './steps/findings.ts';
import './steps/outcome.ts';
import './steps/preview.ts';
import './steps/weigh.ts';
import { type PaneTheme, prefersDark, showTheme } from './theme.ts';

type Ready = Extract<BookState, { kind: 'ready' }>;
type Page = Step | 'reading' | 'findings';

/** The whole pane: one flow for one pour, in whatever host its `port` reaches. */
export class PourPane extends LitElement {
  static override styles = [
    looks,
    stepBarLooks,
    css`
      :host {
        min-height: 100%;
        background: var(--colorNeutralBackground1);
      }
      section {
        max-width: 560px;
        margin: 0 auto;
        padding: 12px 16px 24px;
      }
    `,
  ];
  static override properties = { port: { attribute: false }, theme: {} };

  /** The workbook. Set it once the host is ready; until then the pane waits. */
  declare port: HostPort | undefined;
  /** Light or dark as the host looks; where not set, as the person prefers. */
  declare theme: PaneTheme | undefined;
  private flow: Flow | undefined;
  private readonly preference = prefersDark();
  private page: Page | undefined;

  constructor() {
    super();
    this.listen('pour-told', (told) => this.flow?.tell(told));
    this.listen('pour-step', (step) => this.flow?.goTo(step));
    this.listen('pour-record', () => this.flow?.record());
    this.listen('pour-undo', (batch) => this.flow?.undo(batch));
    this.listen('pour-another', () => this.flow?.another());
    this.listen('pour-check-again', () => this.flow?.checkAgain());
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.preference.addEventListener('change', this.look);
    this.look();
    this.open();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.flow?.stop();
    this.preference.removeEventListener('change', this.look);
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('theme')) this.look();
    if (changed.has('port')) this.open();
  }

  private open(): void {
    this.flow?.stop();
    this.flow =
      this.port &&
      new Flow(this.port, () => {
        this.requestUpdate();
      });
    this.flow?.start();
  }

  protected override updated(): void {
    const page = this.currentPage();
    const before = this.page;
    this.page = page;
    // The first page to show leaves the focus where it is: perhaps in the sheet.
    if (before !== undefined && before !== 'reading' && before !== page) void this.focusHeading();
  }

  override render(): TemplateResult {
    const page = this.currentPage();
    return html`<section aria-label="Record a pour">
      ${page === 'reading' || page === 'findings' ? '' : stepBar(page)} ${this.content(page)}
    </section>`;
  }

  private currentPage(): Page {
    const { flow } = this;
    if (flow === undefined || flow.state.kind === 'reading') return 'reading';
    if (flow.state.kind !== 'ready') return 'findings';
    if (flow.draft.step === 'choose' || flow.draft.step === 'done') return flow.draft.step;
    if (flow.busy !== undefined || flow.isHalfWritten) return 'preview';
    return planOfDraft(flow.state.book, flow.draft, flow.today).ok ? flow.draft.step : 'choose';
  }

  private content(page: Page): TemplateResult {
    const state = this.flow?.state;
    if (this.flow === undefined || state === undefined || state.kind === 'reading') {
      return html`<p role="status" class="quiet">Reading the workbook…</p>`;
    }
    if (state.kind !== 'ready') {
      return html`<pour-findings
        .findings=${state.kind === 'failed' ? [state.sentence] : state.findings}
        .isUnreachable=${state.kind === 'failed'}
      ></pour-findings>`;
    }
    return this.step(page, this.flow, state);
  }

  private step(page: Page, flow: Flow, { book, ...rest }: Ready): TemplateResult {
    const { draft, today, notice, by } = flow;
    const isBusy = flow.busy !== undefined;
    const planned: Result<PlannedPour> = planOfDraft(book, draft, today);
    if (page === 'done') {
      return html`<pour-done
        .batch=${draft.batch}
        .book=${book}
        .today=${today}
        .notice=${notice}
        .isBusy=${isBusy}
      ></pour-done>`;
    }
    if (page === 'preview') {
      return html`<pour-preview
        .draft=${draft}
        .posting=${postingOf({ book, ...rest }, draft, today, by)}
        .shortages=${shortagesOf({ book, ...rest }, draft, today, by)}
        .currency=${book.settings.currency}
        .notice=${notice}
        .isBusy=${isBusy}
        .isHalfWritten=${flow.isHalfWritten}
      ></pour-preview>`;
    }
    if (page === 'weigh' && planned.ok) {
      return html`<pour-weigh
        .book=${book}
        .draft=${draft}
        .planned=${planned.value}
        .stock=${postBatch(book, pourAsPlanned(draft, planned.value), today)}
        .today=${today}
      ></pour-weigh>`;
    }
    if (page === 'outcome' && planned.ok) {
      return html`<pour-outcome
        .draft=${draft}
        .planned=${planned.value}
        .checked=${postingOf({ book, ...rest }, draft, today, by)}
      ></pour-outcome>`;
    }
    return html`<pour-choose
      .book=${book}
      .draft=${draft}
      .planned=${planned}
      .today=${today}
      .notice=${notice}
      .isBusy=${isBusy}
    ></pour-choose>`;
  }

  private readonly look = (): void => {
    showTheme(this, this.theme ?? (this.preference.matches ? 'dark' : 'light'));
  };

  private async focusHeading(): Promise<void> {
    const step = this.renderRoot.querySelector<LitElement>('section > :last-child');
    await step?.updateComplete;
    step?.renderRoot.querySelector<HTMLElement>('h2')?.focus();
    // The new step from its beginning, wherever the last one was scrolled to.
    this.scrollIntoView({ block: 'start' });
  }

  private listen<K extends keyof PaneEvents>(
    name: K,
    then: (detail: PaneEvents[K]) => unknown,
  ): void {
    this.addEventListener(name, (event) => {
      void then((event as CustomEvent<PaneEvents[K]>).detail);
    });
  }
}

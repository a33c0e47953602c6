import '@fluentui/web-components/button.js';
import { html, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { Book, Fair } from '../../../src/domain/book/book.ts';
import { count } from '../../../src/domain/kernel/count.ts';
import { type Day, isoDate, readDay } from '../../../src/domain/kernel/day.ts';
import { exact } from '../../../src/domain/kernel/exact.ts';
import { nameKey } from '../../../src/domain/kernel/names.ts';
import { day, moneyText } from '../../format.ts';
import { cardLooks, fieldLooks, looks, noticeLooks } from '../../looks.ts';
import { dateField } from '../../parts/date-field.ts';
import { EnterFrame } from '../../parts/enter-frame.ts';
import { linkLooks, placeLink } from '../../parts/place-link.ts';
import { noticeBar } from '../../parts/notice.ts';
import { numberField } from '../../parts/number-field.ts';
import { recentList, recentLooks } from '../../parts/recent-list.ts';
import { selectField } from '../../parts/select-field.ts';
import { tapCountLooks } from '../../parts/tap-count.ts';
import { moneyIn, readTyped } from '../../typed-number.ts';
import { saleRows, soFar } from '../day-of-draft.ts';
import { type SellDraft, tell, withPasted, withSale } from '../draft.ts';
import { readPasted } from '../paste-rows.ts';
import { saleLines, saleLooks } from '../sale-lines.ts';
import { sellingDays } from '../selling-days.ts';

/** First step of selling: where and when, bars and prices, the day's fees. */
export class SellEnterStep extends EnterFrame {
  static override styles = [
    looks,
    fieldLooks,
    cardLooks,
    noticeLooks,
    recentLooks,
    saleLooks,
    tapCountLooks,
    linkLooks,
  ];
  static override properties = {
    book: { attribute: false },
    draft: { attribute: false },
    today: { attribute: false },
    isBusy: { attribute: false },
    takenOver: { state: true },
  };

  declare book: Book;
  declare draft: SellDraft;
  declare today: Day;
  declare isBusy: boolean;
  /** What came of the rows taken over last. */
  declare takenOver: readonly string[];

  constructor() {
    super();
    this.takenOver = [];
  }

  override render(): TemplateResult {
    return html`<div class="stack" @paste=${this.pasteRows}>
      <h2 tabindex="-1">What was sold?</h2>
      ${this.place()} ${this.lines()} ${this.fees()} ${this.sheetRows()}
      ${this.wayOn('See what will be written')} ${this.recent()}
    </div>`;
  }

  private place() {
    const fairs = [...this.book.fairs.values()].sort((a, b) => b.opens - a.opens);
    const fair = this.book.fairs.get(nameKey(this.draft.fair));
    return html`${selectField(
      {
        id: 'fair',
        label: 'Fair',
        value: this.draft.fair,
        choices: [
          { value: '', text: 'None: at the counter, online' },
          ...fairs.map(({ fair: name, opens }) => ({
            value: name,
            text: `${name}, ${day(opens)}`,
          })),
        ],
        onChosen: (name) => {
          this.chooseFair(name);
        },
      },
      fair === undefined ? this.otherFair() : this.fairCosts(fair),
    )}
    ${dateField({
      id: 'sold-on',
      label: 'Date sold',
      value: this.draft.soldOn,
      onChosen: (soldOn) => {
        tell(this, 'task-told', { soldOn });
      },
    })}`;
  }

  private otherFair() {
    return html`<p class="small quiet">
      A fair that is not listed: ${placeLink(this, { kind: 'fairs' }, 'type it first', 'Fairs')}
    </p>`;
  }

  private fairCosts({ opens, stallFee, travel, otherCost, hours }: Fair) {
    const { currency } = this.book.settings;
    const costs = Object.entries({ 'stall fee': stallFee, travel, 'other cost': otherCost })
      .map(([name, amount]) => `${name} ${moneyText(exact(amount), currency)}`)
      .join(', ');
    const isOther = Math.floor(readDay(this.draft.soldOn) ?? opens) !== Math.floor(opens);
    return html`${
        isOther
          ? html`<p class="small">This fair opens on ${day(opens)}, not on the date sold.</p>`
          : nothing
      }
      <p class="small quiet">
        This fair’s ${costs}${hours === undefined ? '' : `, ${count(exact(hours), 'hour')}`}. To
        change them, change its line in Fairs.
      </p>`;
  }

  /** A fair that is over was sold at on its own day, more often than not. */
  private chooseFair(name: string): void {
    const opens = this.book.fairs.get(nameKey(name))?.opens;
    const soldOn = opens !== undefined && opens <= this.today ? isoDate(opens) : undefined;
    tell(this, 'task-told', { fair: name, ...(soldOn === undefined ? {} : { soldOn }) });
  }

  private lines() {
    const { book, draft } = this;
    const rows = saleRows(book, draft, this.today);
    const { bars, takings } = soFar(book, draft);
    if (rows.length === 0) {
      return noticeBar({
        kind: 'plain',
        text: 'There are no bars in stock on that day. Record a pour first, or count the shelf.',
      });
    }
    return html`<section class="stack tight" aria-labelledby="bars">
      <h3 id="bars">Bars and prices</h3>
      <ul>
        ${rows.map((row, index) =>
          saleLines(row, index, book.settings.currency, (design, at, told) => {
            tell(this, 'task-told', { lines: withSale(draft.lines, design, at, told) });
          }),
        )}
      </ul>
      <p role="status">
        <strong>${count(bars, 'bar')}, ${moneyText(takings, book.settings.currency)}</strong> so
        far.
      </p>
    </section>`;
  }

  private fees() {
    const { fees } = this.draft;
    const amountOf = moneyIn(this.book.settings.currency);
    const read = fees.trim() === '' ? undefined : readTyped(fees, 'Fees of the day', amountOf);
    return numberField({
      id: 'fees',
      label: 'Fees of the day',
      unit: this.book.settings.currency,
      value: fees,
      amountOf,
      hint: 'What the card firm and the market kept. Blank is none. The stall fee is in Fairs.',
      error: read?.ok === false ? read.failure.sentence : undefined,
      onTyped: (text) => {
        tell(this, 'task-told', { fees: text });
      },
    });
  }

  private sheetRows() {
    return html`<details ?open=${this.draft.pasted !== ''}>
        <summary>Paste rows from a sheet</summary>
        <div class="stack tight">
          <div class="field">
            <label for="pasted">Rows of design, bars, price</label>
            <textarea
              id="pasted"
              rows="4"
              spellcheck="false"
              .value=${live(this.draft.pasted)}
              aria-describedby="pasted-hint"
              @input=${(event: InputEvent) => {
                tell(this, 'task-told', { pasted: (event.target as HTMLTextAreaElement).value });
              }}
            ></textarea>
            <p id="pasted-hint" class="small quiet">
              They take the place of what was entered for the same designs. A price left out is the
              design’s own.
            </p>
          </div>
          <div class="actions">
            <fluent-button
              id="take-rows"
              @click=${() => {
                this.takeOver(this.draft.pasted);
              }}
              >Take these rows</fluent-button
            >
          </div>
        </div>
      </details>
      <div role="status">${this.cameOfRows()}</div>`;
  }

  private cameOfRows() {
    if (this.takenOver.length === 0) return nothing;
    return html`<div class="notice ${this.draft.pasted === '' ? 'good' : 'warn'}">
      ${this.takenOver.map((sentence) => html`<p>${sentence}</p>`)}
    </div>`;
  }

  /** Rows pasted anywhere but into the place for them, unless it is just one figure. */
  private pasteRows(event: ClipboardEvent): void {
    const text = event.clipboardData?.getData('text/plain') ?? '';
    const isRows = text.trim().includes('\t') || text.trim().includes('\n');
    const target = event.composedPath()[0];
    if (!isRows || (target instanceof Element && target.id === 'pasted')) return;
    event.preventDefault();
    this.takeOver(text);
  }

  /** All of the rows or none: a row left out by mistake would be money lost. */
  private takeOver(text: string): void {
    const { lines, problems } = readPasted(text, this.book);
    if (problems.length > 0) {
      this.takenOver = ['Nothing was taken over yet. Mend these rows:', ...problems];
      tell(this, 'task-told', { pasted: text });
      return;
    }
    const bars = lines.reduce((total, line) => total + Number(line.bars), 0);
    this.takenOver = [`Taken over: ${count(lines.length, 'row')}, ${count(bars, 'bar')}.`];
    tell(this, 'task-told', { lines: withPasted(this.draft.lines, lines), pasted: '' });
  }

  private recent() {
    const entries = sellingDays(this.book).map(({ id, soldOn, fair, bars, isUndone }) => ({
      id,
      name: fair === '' ? 'At no fair' : fair,
      details: isUndone ? day(soldOn) : `${day(soldOn)} · ${count(bars, 'bar')}`,
      isUndone,
    }));
    return recentList('Last selling days', entries, this.isBusy);
  }
}
customElements.define('pour-sell', SellEnterStep);

import '@fluentui/web-components/button.js';
import { css, html, nothing, type TemplateResult } from 'lit';
import type { Book, Item } from '../../../src/domain/book/book.ts';
import { findItem } from '../../../src/domain/book/find.ts';
import { count } from '../../../src/domain/kernel/count.ts';
import { nameKey } from '../../../src/domain/kernel/names.ts';
import { fieldLooks, looks, noticeLooks } from '../../looks.ts';
import { EnterFrame } from '../../parts/enter-frame.ts';
import { numberField } from '../../parts/number-field.ts';
import { selectField } from '../../parts/select-field.ts';
import { typedAt, typedWith } from '../../task/typed.ts';
import { quantityOfItem } from '../../typed-number.ts';
import { type CountDraft, tell } from '../draft.ts';
import { countOf, type ShelfGroup, shelfGroups, shelfKinds } from '../shelf-items.ts';

/** First step of a count: what is on the shelf, without a word of what the ledger expects. */
export class CountEnterStep extends EnterFrame {
  static override styles = [
    looks,
    fieldLooks,
    noticeLooks,
    css`
      .beside-button {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: 8px;
      }
    `,
  ];
  static override properties = {
    book: { attribute: false },
    draft: { attribute: false },
    otherItem: { state: true },
    otherProblem: { state: true },
  };

  declare book: Book;
  declare draft: CountDraft;
  /** Name of something not listed, as typed. */
  declare otherItem: string;
  declare otherProblem: string | undefined;

  constructor() {
    super();
    this.otherItem = '';
  }

  override render(): TemplateResult {
    const groups = shelfGroups(this.book, this.draft);
    const items = groups.flatMap((group) => group.items);
    const counted = items.filter((item) => countOf(item, this.draft) !== undefined).length;
    return html`<div class="stack">
      <div>
        <h2 tabindex="-1">What is on the shelf?</h2>
        <p class="quiet">
          Count and weigh what is there. What you leave blank is not counted; type 0 for nothing
          left.
        </p>
      </div>
      ${this.kindField(groups)} ${groups.filter((group) => this.isShown(group)).map(this.group)}
      ${this.somethingElse()}
      <p role="status" class="quiet">${counted} of ${count(items.length, 'item')} counted.</p>
      ${this.wayOn('See the differences')}
    </div>`;
  }

  private isShown({ kind }: ShelfGroup): boolean {
    return !Object.hasOwn(shelfKinds, this.draft.kind) || this.draft.kind === kind;
  }

  private kindField(groups: readonly ShelfGroup[]) {
    return selectField({
      id: 'kind',
      label: 'Which shelf',
      value: this.draft.kind,
      choices: [
        { value: '', text: 'All of it' },
        ...groups.map(({ kind, title }) => ({ value: kind, text: title })),
      ],
      onChosen: (kind) => {
        tell(this, 'task-told', { kind });
      },
    });
  }

  private readonly group = ({ kind, title, items }: ShelfGroup): TemplateResult =>
    html`<section class="stack tight" aria-labelledby="kind-${kind}">
      <h3 id="kind-${kind}">${title}</h3>
      ${items.map((item, index) => this.field(item, `${kind}-${String(index)}`))}
    </section>`;

  private field(item: Item, id: string) {
    const counted = countOf(item, this.draft);
    return numberField({
      id,
      label: item.name,
      unit: item.unit === 'each' ? 'pieces' : item.unit,
      value: typedAt(this.draft.counts, item.name) ?? '',
      amountOf: quantityOfItem(item),
      isBeside: true,
      error: counted?.ok === false ? counted.failure.sentence : undefined,
      onTyped: (text) => {
        const told = text.trim() === '' ? undefined : text;
        tell(this, 'task-told', { counts: typedWith(this.draft.counts, item.name, told) });
      },
    });
  }

  /** A cup of leftover soap or a bag of tiles that the ledger has never heard of. */
  private somethingElse() {
    const problem = this.otherProblem;
    return html`<details>
      <summary>Something not listed</summary>
      <div class="field">
        <label for="other">Its name, such as “Teal leftover” or “Teal × Small tiles”</label>
        <div class="beside-button">
          <input
            id="other"
            autocomplete="off"
            .value=${this.otherItem}
            aria-invalid=${problem === undefined ? 'false' : 'true'}
            aria-describedby=${problem === undefined ? nothing : 'other-error'}
            @input=${(event: InputEvent) => {
              this.otherItem = (event.target as HTMLInputElement).value;
              this.otherProblem = undefined;
            }}
          />
          <fluent-button id="add-other" @click=${this.addOther}>Add it</fluent-button>
        </div>
        ${
          problem === undefined
            ? nothing
            : html`<p id="other-error" class="small error">${problem}</p>`
        }
      </div>
    </details>`;
  }

  private addOther(): void {
    // An x between spaces is meant as the sign × of spare pieces, which few keyboards have.
    const found = findItem(this.book, this.otherItem.replace(/ x /iu, ' × '));
    if (!found.ok) {
      this.otherProblem = found.failure.sentence;
      return;
    }
    const { name } = found.value;
    const isListed = shelfGroups(this.book, this.draft)
      .flatMap(({ items }) => items)
      .some((item) => nameKey(item.name) === nameKey(name));
    this.otherItem = '';
    tell(this, 'task-told', {
      kind: '',
      ...(isListed ? {} : { also: [...this.draft.also, name] }),
    });
  }
}
customElements.define('pour-count', CountEnterStep);

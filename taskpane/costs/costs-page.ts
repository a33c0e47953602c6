import { html, LitElement, nothing, type TemplateResult } from 'lit';
import type { Book, Design } from '../../src/domain/book/book.ts';
import { findDesign } from '../../src/domain/book/find.ts';
import type { Day } from '../../src/domain/kernel/day.ts';
import { compareNames, nameKey } from '../../src/domain/kernel/names.ts';
import type { Result } from '../../src/domain/kernel/result.ts';
import { day } from '../format.ts';
import { fieldLooks, looks, noticeLooks } from '../looks.ts';
import { linkLooks, placeLink } from '../parts/place-link.ts';
import { noticeBar } from '../parts/notice.ts';
import { choicesOf, selectField } from '../parts/select-field.ts';
import type { Picture } from '../pictures/picture.ts';
import '../pictures/picture.ts';
import { tellShown } from '../task/look-task.ts';
import { takingsByFair } from '../parts/takings-by-fair.ts';
import { costByBatch, priceAgainstBars, whereCostGoes } from './pictures.ts';
import type { CostsShown } from './costs-look.ts';

/** Pictures of what a bar costs, what to ask and what fairs brought. Writes nothing. */
export class CostsPage extends LitElement {
  static override styles = [looks, fieldLooks, noticeLooks, linkLooks];
  static override properties = {
    book: { attribute: false },
    shown: { attribute: false },
    today: { attribute: false },
  };

  declare book: Book;
  declare shown: CostsShown;
  declare today: Day;

  override render(): TemplateResult {
    const names = [...this.book.designs.values()].map(({ name }) => name).sort(compareNames);
    const found = findDesign(
      this.book,
      this.shown.design === '' ? (names[0] ?? '') : this.shown.design,
    );
    return html`<div class="stack">
      <h2 tabindex="-1">What does a bar cost?</h2>
      ${
        found.ok
          ? html`${selectField({
              id: 'design',
              label: 'Design',
              value: found.value.name,
              choices: choicesOf(names),
              onChosen: (design) => {
                tellShown<CostsShown>(this, { design });
              },
            })}
            ${this.ofDesign(found.value)}`
          : noticeBar(
              {
                kind: 'plain',
                text: 'There is no design yet. Add one line to Designs and what a bar is made of to Layers; they appear here at once.',
              },
              placeLink(this, { kind: 'designs' }, 'Type there', 'Designs'),
            )
      }
      ${this.book.fairs.size === 0 ? nothing : this.picture(takingsByFair(this.book))}
    </div>`;
  }

  private ofDesign(design: Design) {
    return html`${this.picture(whereCostGoes(this.book, design, this.today))} ${this.labour(design)}
    ${this.picture(costByBatch(this.book, design, this.today))} ${this.atFair(design)}`;
  }

  /** Work that costs nothing is easily overlooked in what a bar costs. */
  private labour({ labourMinutes, setupMinutes }: Design) {
    const isWork = labourMinutes.plus(setupMinutes).gt(0);
    return isWork && this.book.settings.labourRatePerHour.isZero()
      ? noticeBar(
          {
            kind: 'plain',
            text: 'Your work counts as nothing here. Type what an hour of it costs as Labour rate per hour in Settings.',
          },
          placeLink(this, { kind: 'settings', row: 1, header: 'Value' }, 'Show', 'Settings'),
        )
      : nothing;
  }

  /** The fair chosen, or the next to come, or the last there was. */
  private atFair(design: Design) {
    const fairs = [...this.book.fairs.values()].sort((a, b) => a.opens - b.opens);
    const chosen = this.book.fairs.get(nameKey(this.shown.fair));
    const fair = chosen ?? fairs.find(({ opens }) => opens >= this.today) ?? fairs.at(-1);
    if (fair === undefined) return nothing;
    return html`${selectField({
      id: 'fair',
      label: 'Fair',
      value: fair.fair,
      choices: fairs.map(({ fair: name, opens }) => ({
        value: name,
        text: `${name}, ${day(opens)}`,
      })),
      onChosen: (name) => {
        tellShown<CostsShown>(this, { fair: name });
      },
    })}
    ${this.picture(priceAgainstBars(this.book, design, fair, this.today))}`;
  }

  private picture(picture: Result<Picture>) {
    return picture.ok
      ? html`<pour-picture .picture=${picture.value}></pour-picture>`
      : noticeBar({ kind: 'plain', text: picture.failure.sentence });
  }
}
customElements.define('pour-costs', CostsPage);

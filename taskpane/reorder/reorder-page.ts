import { html, LitElement, type TemplateResult } from 'lit';
import type { Book, Material } from '../../src/domain/book/book.ts';
import { findMaterial, itemOfMaterial } from '../../src/domain/book/find.ts';
import type { Day } from '../../src/domain/kernel/day.ts';
import type { Exact } from '../../src/domain/kernel/exact.ts';
import { compareNames } from '../../src/domain/kernel/names.ts';
import { andThen } from '../../src/domain/kernel/result.ts';
import { packsToOrder } from '../../src/domain/reorder/reorder-point.ts';
import {
  type CheckedPoint,
  type ServiceCheck,
  serviceCheck,
} from '../../src/domain/reorder/service-check.ts';
import { onHand } from '../../src/domain/stock/on-hand.ts';
import { amount } from '../format.ts';
import { cardLooks, fieldLooks, looks, noticeLooks } from '../looks.ts';
import { linkLooks, placeLink } from '../parts/place-link.ts';
import { noticeBar } from '../parts/notice.ts';
import { choicesOf, selectField } from '../parts/select-field.ts';
import '../pictures/picture.ts';
import { keptAnswer } from '../task/kept-answer.ts';
import { tellShown } from '../task/look-task.ts';
import { yearPicture } from './pictures.ts';
import type { ReorderShown } from './reorder-look.ts';
import { quantity } from './words.ts';

/** Two points at which to order a material again, which to trust, and a year with each. Writes nothing. */
export class ReorderPage extends LitElement {
  static override styles = [looks, cardLooks, fieldLooks, noticeLooks, linkLooks];
  static override properties = {
    book: { attribute: false },
    shown: { attribute: false },
    today: { attribute: false },
  };

  declare book: Book;
  declare shown: ReorderShown;
  declare today: Day;

  override render(): TemplateResult {
    const names = namesIn(this.book);
    const chosen =
      this.shown.material === '' ? firstShown(this.book, this.today) : this.shown.material;
    const found = findMaterial(this.book, chosen);
    return html`<div class="stack">
      <h2 tabindex="-1">When to order again?</h2>
      ${
        names.length === 0
          ? noticeBar(
              {
                kind: 'plain',
                text: 'There is no material yet. Add what you buy to Materials; it appears here at once.',
              },
              placeLink(this, { kind: 'materials' }, 'Type there', 'Materials'),
            )
          : selectField({
              id: 'material',
              label: 'Material',
              value: chosen,
              ask: 'Choose a material',
              choices: choicesOf(names),
              onChosen: (material) => {
                tellShown<ReorderShown>(this, { material });
              },
            })
      }
      ${found.ok ? this.ofMaterial(found.value) : ''}
    </div>`;
  }

  private ofMaterial(material: Material): TemplateResult {
    const check = serviceCheck(this.book, material, this.today);
    const stock = onHand(this.book, itemOfMaterial(material), this.today);
    const there = html`On hand: <strong>${amount(stock, material.unit).text}</strong>`;
    if (!check.ok)
      return html`<p>${there}</p>
        ${noticeBar({ kind: 'plain', text: check.failure.sentence })}`;
    const { usual, own, trust, sentence } = check.value;
    const isDue = stock.lte((trust === 'usual' ? usual : own).point);
    return html`<p>
        ${there}. ${isDue ? html`<strong>Order now.</strong>` : 'No need to order yet.'}
      </p>
      ${trust === 'usual' ? '' : html`<p>${whyOthersDiffer(usual, stock, material)}</p>`}
      ${this.figures(check.value, material)}
      ${noticeBar({ kind: trust === 'usual' ? 'good' : 'warn', text: sentence })}
      <pour-picture .picture=${yearPicture('usual', usual, material)}></pour-picture>
      <pour-picture .picture=${yearPicture('own', own, material)}></pour-picture>
      <p class="quiet small">
        Both years have the same days of use, drawn at random from your own, and are typical of the
        usual formula’s. No year to come will be just like them.
      </p>`;
  }

  private figures({ askedPercent, usual, own }: ServiceCheck, material: Material): TemplateResult {
    const both = [usual, own];
    return html`<table>
      <caption class="unseen">
        Two points to order at
      </caption>
      <thead>
        <tr>
          <th scope="col"><span class="unseen">Figure</span></th>
          <th scope="col" class="figure">Usual formula</th>
          <th scope="col" class="figure">Own days</th>
        </tr>
      </thead>
      <tbody>
        <tr>
          <th scope="row">Order at or below</th>
          ${both.map(({ point }) => html`<td class="figure">${quantity(point, material)}</td>`)}
        </tr>
        <tr>
          <th scope="row">Lasts, of 100 waits</th>
          ${both.map(
            ({ servicePercent }) => html`<td class="figure">${servicePercent.toFixed(0)}</td>`,
          )}
        </tr>
        <tr>
          <th scope="row">Asked for</th>
          ${both.map(() => html`<td class="figure">${String(askedPercent)}</td>`)}
        </tr>
      </tbody>
    </table>`;
  }
}
customElements.define('pour-reorder', ReorderPage);

/** Trying a point takes too long to be done for all materials at once, so lists go by the formula. */
function whyOthersDiffer({ point }: CheckedPoint, stock: Exact, material: Material): string {
  const level = quantity(point, material);
  const there = stock.lte(point) ? 'so they say so too' : 'so they don’t say so before that';
  return `Now and the Reorder sheet go by the usual formula for all materials, ${level} for this one, ${there}. Where they differ, go by this page.`;
}

const namesIn = (book: Book): string[] =>
  [...book.materials.values()].map(({ name }) => name).sort(compareNames);

/** The first that is to be ordered, else the first. Kept, since it looks at the use of them all. */
const firstShown = keptAnswer((book: Book, today: Day): string => {
  const names = namesIn(book);
  const isDue = (name: string): boolean => {
    const packs = andThen(findMaterial(book, name), (material) =>
      packsToOrder(book, material, today),
    );
    return packs.ok && packs.value.gt(0);
  };
  return names.find(isDue) ?? names[0] ?? '';
});

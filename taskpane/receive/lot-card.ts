import { html, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { Book, Material } from '../../src/domain/book/book.ts';
import { findMaterial } from '../../src/domain/book/find.ts';
import { compareNames } from '../../src/domain/kernel/names.ts';
import type { Result } from '../../src/domain/kernel/result.ts';
import { ledgerAmount, moneyText } from '../format.ts';
import { dateField } from '../parts/date-field.ts';
import { numberField } from '../parts/number-field.ts';
import { choicesOf, selectField } from '../parts/select-field.ts';
import { moneyIn, quantityIn, readTyped } from '../typed-number.ts';
import { quantityOf } from './delivery-of-draft.ts';
import type { TypedLot } from './draft.ts';

/** One material that came: its card in the form. */
export interface LotCard {
  readonly line: TypedLot;
  readonly at: number;
  readonly book: Book;
  readonly onTold: (told: Partial<TypedLot>) => void;
  /** Undefined where it is the only line. */
  readonly onRemoved: (() => void) | undefined;
}

/** The fields of one line of a delivery. */
export function lotCard({ line, at, book, onTold, onRemoved }: LotCard): TemplateResult {
  const found = line.material === '' ? undefined : findMaterial(book, line.material);
  const material = found?.ok === true ? found.value : undefined;
  const title = material?.name ?? `Line ${String(at + 1)}`;
  const names = [...book.materials.values()].map(({ name }) => name).sort(compareNames);
  return html`<section class="card" aria-labelledby="line-${at}">
    <header class="spread centred">
      <h3 id="line-${at}">${title}</h3>
      ${
        onRemoved === undefined
          ? nothing
          : html`<fluent-button
              size="small"
              appearance="subtle"
              aria-label="Remove ${title}"
              @click=${onRemoved}
              >Remove</fluent-button
            >`
      }
    </header>
    <div class="body stack">
      ${selectField({
        id: `material-${String(at)}`,
        label: 'Material',
        value: line.material,
        ask: 'Choose a material',
        choices: choicesOf(names),
        onChosen: (name) => {
          onTold({ material: name });
        },
      })}
      ${material === undefined ? nothing : figures(material, line, at, book, onTold)}
    </div>
  </section>`;
}

function figures(
  material: Material,
  line: TypedLot,
  at: number,
  { settings: { currency } }: Book,
  onTold: LotCard['onTold'],
): TemplateResult {
  const { name, packPrice } = material;
  return html`<div class="row">${amounts(material, line, at, onTold)}</div>
    <div class="row">
      ${numberField({
        id: `paid-${String(at)}`,
        label: 'Paid',
        unit: currency,
        value: line.paid,
        amountOf: moneyIn(currency),
        error: errorOf(line.paid, () =>
          readTyped(line.paid, `Paid for ${name}`, moneyIn(currency)),
        ),
        ...(packPrice === undefined
          ? {}
          : { hint: `A pack is ${moneyText(packPrice, currency)} in Materials.` }),
        onTyped: (paid) => {
          onTold({ paid });
        },
      })}
      ${dateField({
        id: `best-before-${String(at)}`,
        label: 'Best before',
        value: line.bestBefore,
        onChosen: (bestBefore) => {
          onTold({ bestBefore });
        },
      })}
    </div>
    <div class="field">
      <label for="lot-${at}">Lot number (if it has one)</label>
      <input
        id="lot-${at}"
        autocomplete="off"
        maxlength="60"
        .value=${live(line.lot)}
        @input=${(event: InputEvent) => {
          onTold({ lot: (event.target as HTMLInputElement).value });
        }}
      />
    </div>`;
}

/** Packs where the pack size is known, and a quantity in any case. */
function amounts(material: Material, line: TypedLot, at: number, onTold: LotCard['onTold']) {
  const { name, unit, packSize } = material;
  const shown = unit === 'each' ? 'pieces' : unit;
  const amountOf = quantityIn(unit, material);
  const quantity = quantityOf(material, line);
  const isSaid = line.packs.trim() !== '' || line.quantity.trim() !== '';
  const error = isSaid && !quantity.ok ? quantity.failure.sentence : undefined;
  const isOfPacks = line.packs.trim() !== '' && packSize !== undefined;
  const total =
    quantity.ok && isOfPacks ? `${ledgerAmount(quantity.value, unit)} in all` : undefined;
  return html`${
    packSize === undefined
      ? nothing
      : numberField({
          id: `packs-${String(at)}`,
          label: `Packs of ${ledgerAmount(packSize, unit)}`,
          value: line.packs,
          error: isOfPacks ? error : undefined,
          ...(total === undefined ? {} : { hint: total }),
          onTyped: (packs) => {
            onTold({ packs });
          },
        })
  }
  ${numberField({
    id: `quantity-${String(at)}`,
    label: packSize === undefined ? 'Quantity' : 'Or a quantity',
    unit: shown,
    value: line.quantity,
    amountOf,
    error: isOfPacks
      ? undefined
      : (error ?? errorOf(line.quantity, () => readTyped(line.quantity, name, amountOf))),
    onTyped: (text) => {
      onTold({ quantity: text });
    },
  })}`;
}

function errorOf(typed: string, read: () => Result<unknown>): string | undefined {
  if (typed.trim() === '') return undefined;
  const value = read();
  return value.ok ? undefined : value.failure.sentence;
}

import { html, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { AmountOf } from '../../src/domain/measure/typed-amount.ts';
import { asRead } from '../as-read.ts';
import { understood } from '../typed-number.ts';

/** A field for one figure. */
export interface NumberField {
  readonly id: string;
  readonly label: string;
  readonly unit?: string;
  readonly value: string;
  /** What is typed there, where units may stand beside it: how it is understood is then shown. */
  readonly amountOf?: AmountOf;
  readonly hint?: string;
  /** What is wrong with the value, or undefined. */
  readonly error: string | undefined;
  readonly whole?: boolean;
  /** Puts the field beside its label, for long lists. */
  readonly isBeside?: boolean;
  /** The label is heard and not seen, where a heading says it already. */
  readonly isLabelUnseen?: boolean;
  readonly onTyped: (text: string) => void;
}

/** A labelled field whose hint and error are read out with it. */
export function numberField(field: NumberField): TemplateResult {
  const { id, label, unit, value, hint, error, amountOf } = field;
  const read = amountOf && understood(value, amountOf);
  const described = [read && `${id}-read`, hint && `${id}-hint`, error && `${id}-error`]
    .filter(Boolean)
    .join(' ');
  return html`<div class=${field.isBeside === true ? 'field beside' : 'field'}>
    <label for=${id} class=${field.isLabelUnseen === true ? 'unseen' : ''}>${label}</label>
    <div class="box">
      <input
        id=${id}
        inputmode=${inputMode(field)}
        autocomplete="off"
        .value=${live(value)}
        aria-invalid=${error === undefined ? 'false' : 'true'}
        aria-describedby=${described === '' ? nothing : described}
        @input=${(event: InputEvent) => {
          field.onTyped((event.target as HTMLInputElement).value);
        }}
      />
      ${unit === undefined ? nothing : html`<span class="unit">${unit}</span>`}
    </div>
    ${read === undefined ? nothing : html`<p id="${id}-read" class="small" role="status">${read}</p>`}
    ${hint === undefined ? nothing : html`<p id="${id}-hint" class="small quiet">${asRead(hint)}</p>`}
    ${error === undefined ? nothing : html`<p id="${id}-error" class="small error">${asRead(error)}</p>`}
  </div>`;
}

/** Units are letters, which a keypad of figures doesn't have. */
const inputMode = ({ whole, amountOf }: NumberField): string =>
  whole === true
    ? 'numeric'
    : amountOf === undefined || amountOf.kind === 'money'
      ? 'decimal'
      : 'text';

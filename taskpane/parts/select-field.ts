import { html, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { nameKey } from '../../src/domain/kernel/names.ts';

/** One of several names to choose. */
export interface SelectField {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  /** Shown while none is chosen; it can't be gone back to. */
  readonly ask?: string;
  readonly choices: readonly { readonly value: string; readonly text: string }[];
  readonly onChosen: (value: string) => void;
}

/** A labelled choice, with whatever is to stand below it. */
export function selectField(
  field: SelectField,
  below: TemplateResult | typeof nothing = nothing,
): TemplateResult {
  const { id, label, value, ask, choices, onChosen } = field;
  const chosen = nameKey(value);
  const isKnown = choices.some((choice) => nameKey(choice.value) === chosen);
  return html`<div class="field">
    <label for=${id}>${label}</label>
    <select
      id=${id}
      @change=${(event: Event) => {
        onChosen((event.target as HTMLSelectElement).value);
      }}
    >
      ${
        ask === undefined
          ? nothing
          : html`<option value="" ?selected=${!isKnown} disabled>${ask}</option>`
      }
      ${choices.map(
        (choice) =>
          html`<option value=${choice.value} .selected=${live(nameKey(choice.value) === chosen)}>
            ${choice.text}
          </option>`,
      )}
    </select>
    ${below}
  </div>`;
}

/** Names that stand for themselves. */
export const choicesOf = (names: readonly string[]): SelectField['choices'] =>
  names.map((name) => ({ value: name, text: name }));

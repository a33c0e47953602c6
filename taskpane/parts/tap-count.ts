import { css, html, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';

/** A whole number that is tapped up and down or typed. */
export interface TapCount {
  readonly id: string;
  /** What is counted, such as "bars of Tide Pool"; heard and not seen. */
  readonly what: string;
  readonly value: string;
  readonly error: string | undefined;
  readonly onTyped: (text: string) => void;
}

/** − and + around a field; below 1 it is blank, since nothing was counted. */
export function tapCount({ id, what, value, error, onTyped }: TapCount): TemplateResult {
  const now = /^\d+$/u.test(value.trim()) ? Number(value) : 0;
  const tap = (by: number) => () => {
    const next = now + by;
    onTyped(next < 1 ? '' : String(next));
  };
  return html`<div class="tap-count">
    <button aria-label="One less: ${what}" ?disabled=${now < 1} @click=${tap(-1)}>−</button>
    <input
      id=${id}
      inputmode="numeric"
      autocomplete="off"
      aria-label=${what}
      .value=${live(value)}
      aria-invalid=${error === undefined ? 'false' : 'true'}
      aria-describedby=${error === undefined ? nothing : `${id}-error`}
      @input=${(event: InputEvent) => {
        onTyped((event.target as HTMLInputElement).value);
      }}
    />
    <button aria-label="One more: ${what}" @click=${tap(1)}>+</button>
  </div>`;
}

/** Big enough for a thumb at a busy stall. */
export const tapCountLooks = css`
  .tap-count {
    display: grid;
    grid-template-columns: 40px minmax(44px, 1fr) 40px;
  }
  .tap-count input {
    border-radius: 0;
    padding: 4px;
    text-align: center;
  }
  .tap-count button {
    min-height: 36px;
    border: 1px solid var(--colorNeutralStrokeAccessible);
    background: var(--colorNeutralBackground3);
    color: inherit;
    font: inherit;
    font-size: var(--fontSizeBase400);
    cursor: pointer;
  }
  .tap-count button:first-child {
    border-right: 0;
    border-radius: var(--borderRadiusMedium) 0 0 var(--borderRadiusMedium);
  }
  .tap-count button:last-child {
    border-left: 0;
    border-radius: 0 var(--borderRadiusMedium) var(--borderRadiusMedium) 0;
  }
  .tap-count button:disabled {
    color: var(--colorNeutralForegroundDisabled);
    cursor: default;
  }
  .tap-count button:focus-visible {
    position: relative;
    outline: 2px solid var(--colorStrokeFocus2);
    outline-offset: 1px;
  }
`;

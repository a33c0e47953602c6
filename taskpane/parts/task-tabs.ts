import { css, html, type TemplateResult } from 'lit';

/** What a tab stands for. */
export interface Tab {
  readonly name: string;
  readonly label: string;
}

/** Tabs by the usual keys: arrows move between them, Home and End to the ends; Tab goes on to the page. */
export function taskTabs(
  tabs: readonly Tab[],
  chosen: string,
  onChosen: (name: string) => void,
  purpose = 'What to do',
): TemplateResult {
  const move = (event: KeyboardEvent): void => {
    const at = tabs.findIndex(({ name }) => name === chosen);
    const to = { ArrowRight: at + 1, ArrowLeft: at - 1, Home: 0, End: tabs.length - 1 }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    const next = tabs.at(to % tabs.length);
    if (next === undefined) return;
    onChosen(next.name);
    const list = event.currentTarget as HTMLElement;
    list.querySelector<HTMLElement>(`#tab-${next.name}`)?.focus();
  };
  return html`<div class="tabs" role="tablist" aria-label=${purpose} @keydown=${move}>
    ${tabs.map(
      ({ name, label }) =>
        html`<button
          id="tab-${name}"
          role="tab"
          aria-selected=${name === chosen ? 'true' : 'false'}
          aria-controls="page"
          tabindex=${name === chosen ? '0' : '-1'}
          @click=${() => {
            onChosen(name);
          }}
        >
          ${label}
        </button>`,
    )}
  </div>`;
}

/** The tabs' looks: which one is chosen shows by a line and by weight, not by colour alone. */
export const taskTabLooks = css`
  .tabs {
    display: flex;
    flex-wrap: wrap;
    max-width: 560px;
    margin: 0 auto;
    padding: 4px 4px 0;
    border-bottom: 1px solid var(--colorNeutralStroke2);
  }
  .tabs button {
    flex: 1 0 auto;
    min-height: 36px;
    padding: 4px;
    border: 0;
    border-bottom: 3px solid transparent;
    background: none;
    color: var(--colorNeutralForeground2);
    font: inherit;
    cursor: pointer;
  }
  /* All of them in one row of the narrowest pane. */
  @media (max-width: 340px) {
    .tabs button {
      padding: 4px 3px;
      font-size: var(--fontSizeBase200);
    }
  }
  /* A row of tabs within a tab. */
  .within {
    margin: -8px 0 16px;
  }
  .tabs button:hover {
    color: var(--colorNeutralForeground1);
  }
  .tabs [aria-selected='true'] {
    border-bottom-color: var(--colorCompoundBrandBackground);
    color: var(--colorNeutralForeground1);
    font-weight: var(--fontWeightSemibold);
  }
  .tabs button:focus-visible {
    outline: 2px solid var(--colorStrokeFocus2);
    outline-offset: -2px;
    border-radius: var(--borderRadiusMedium);
  }
`;

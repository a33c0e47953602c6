import { css, html, nothing, type TemplateResult } from 'lit';
import { ifDefined } from 'lit/directives/if-defined.js';
import './undo-button.ts';

/** Something recorded before, as a line with a way to undo it. */
export interface RecentEntry {
  readonly id: string;
  /** What undoing it names, where that is not the id. */
  readonly target?: string;
  readonly name: string;
  /** Day and amount, in a few words. */
  readonly details: string;
  readonly isUndone: boolean;
}

const MOST_SHOWN = 5;

/** The newest few of a list, newest first; nothing where there is none. `means` says what undoing one does. */
export function recentList(
  title: string,
  entries: readonly RecentEntry[],
  isBusy: boolean,
  means?: string,
): TemplateResult | typeof nothing {
  if (entries.length === 0) return nothing;
  return html`<section class="stack tight" aria-labelledby="recent">
    <h3 id="recent">${title}</h3>
    <ul class="stack tight">
      ${entries.slice(0, MOST_SHOWN).map((entry) => recentLine(entry, isBusy, means))}
    </ul>
  </section>`;
}

function recentLine(
  { id, target = id, name, details, isUndone }: RecentEntry,
  isBusy: boolean,
  means?: string,
): TemplateResult {
  return html`<li class="recent">
    <div>
      <p>${name}</p>
      <p class="small quiet">
        ${details} · <span class="id">${id}</span>
        ${isUndone ? html`· <strong>undone</strong>` : nothing}
      </p>
    </div>
    ${
      isUndone
        ? nothing
        : html`<pour-undo-button
            target=${target}
            name="${name}, ${id}"
            means=${ifDefined(means)}
            isSmall
            ?isBusy=${isBusy}
          ></pour-undo-button>`
    }
  </li>`;
}

/** The list's looks. */
export const recentLooks = css`
  .recent {
    display: grid;
    gap: 4px 12px;
    grid-template-columns: repeat(auto-fit, minmax(min(9em, 100%), 1fr));
    align-items: center;
    padding-top: 8px;
    border-top: 1px solid var(--colorNeutralStroke2);
  }
  .recent .id {
    display: inline-block;
  }
  .recent pour-undo-button {
    justify-self: end;
  }
`;

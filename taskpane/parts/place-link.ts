import { css, html, type TemplateResult } from 'lit';
import { asRead } from '../as-read.ts';
import { askForPlace, type WantedPlace } from '../task/events.ts';

/** A button that reads as a link within text. */
export const linkLooks = css`
  .link {
    justify-self: start;
    min-height: 28px;
    padding: 2px 0;
    border: 0;
    border-radius: var(--borderRadiusSmall);
    background: none;
    color: var(--colorBrandForegroundLink);
    font: inherit;
    text-decoration: underline;
    cursor: pointer;
  }
  .link:focus-visible {
    outline: 2px solid var(--colorStrokeFocus2);
    outline-offset: 1px;
  }
`;

/** Leads to a cell of the sheet; `what` is said to whoever only hears the link. */
export function placeLink(
  from: HTMLElement,
  place: WantedPlace,
  text: string,
  what: string,
): TemplateResult {
  return html`<button
    type="button"
    class="link"
    aria-label=${`${text}: ${asRead(what)}`}
    @click=${() => {
      askForPlace(from, place);
    }}
  >
    ${text}
  </button>`;
}

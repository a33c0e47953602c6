import { css, html, nothing, type TemplateResult } from 'lit';

/** How far a task has come: a bar for the eye, a sentence for all; nothing once it is done. */
export function stepBar(
  names: Readonly<Record<string, string>>,
  step: string,
): TemplateResult | typeof nothing {
  const shown = Object.keys(names);
  const at = shown.indexOf(step);
  if (at < 0) return nothing;
  return html`<div class="step-bar">
    <p>Step ${at + 1} of ${shown.length}: ${names[step]}</p>
    <div class="marks" aria-hidden="true">
      ${shown.map((_, index) => html`<span class=${index <= at ? 'on' : ''}></span>`)}
    </div>
  </div>`;
}

/** The bar's looks. */
export const stepBarLooks = css`
  .step-bar {
    display: grid;
    gap: 6px;
    margin-bottom: 16px;
    color: var(--colorNeutralForeground2);
    font-size: var(--fontSizeBase200);
    line-height: var(--lineHeightBase200);
  }
  .marks {
    display: grid;
    grid-auto-flow: column;
    gap: 4px;
  }
  .marks span {
    height: 4px;
    border-radius: 2px;
    background: var(--colorNeutralStroke1);
  }
  .marks .on {
    background: var(--colorCompoundBrandBackground);
  }
`;

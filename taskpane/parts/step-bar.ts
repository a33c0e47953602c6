import { css, html, nothing, type TemplateResult } from 'lit';
import { type Step, steps } from '../draft.ts';

const names: Readonly<Record<Exclude<Step, 'done'>, string>> = {
  choose: 'Choose',
  weigh: 'Weigh out',
  outcome: 'What came out',
  preview: 'Look over',
};

/** How far the flow has come: a bar for the eye, a sentence for all. */
export function stepBar(step: Step): TemplateResult | typeof nothing {
  if (step === 'done') return nothing;
  const shown = steps.filter((known): known is keyof typeof names => known !== 'done');
  const at = shown.indexOf(step);
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

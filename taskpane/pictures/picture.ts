import { css, html, LitElement, type SVGTemplateResult, type TemplateResult } from 'lit';
import { cardLooks, looks } from '../looks.ts';

/** A picture, what it says in a sentence, and the figures behind it. */
export interface Picture {
  /** Also its id: short, and of letters only. */
  readonly key: string;
  readonly title: string;
  /** What a glance at it tells, for those who can't glance. */
  readonly says: string;
  /** Of WIDTH by `height`. */
  readonly drawing: SVGTemplateResult;
  readonly height: number;
  readonly headers: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** Drawn for the narrowest pane, so that no text ever gets smaller than it was meant. */
export const WIDTH = 288;

/** Shows a picture, or the figures behind it as a table. */
export class PictureView extends LitElement {
  static override styles = [
    looks,
    cardLooks,
    css`
      svg {
        display: block;
        width: 100%;
        max-width: 400px;
        margin: 0 auto;
      }
      text {
        fill: var(--colorNeutralForeground1);
        font-size: 12px;
        font-variant-numeric: tabular-nums;
      }
      .axis,
      .grid {
        stroke: var(--colorNeutralStroke2);
      }
      .axis {
        stroke: var(--colorNeutralStrokeAccessible);
      }
      .fine {
        fill: var(--colorNeutralForeground2);
        font-size: 11px;
      }
      .bar {
        fill: var(--colorCompoundBrandBackground);
      }
      .line {
        fill: none;
        stroke: var(--colorCompoundBrandBackground);
        stroke-width: 2.5;
      }
      .thin {
        stroke-width: 1.5;
      }
      .level {
        stroke: var(--colorNeutralForeground1);
        stroke-width: 1.5;
        stroke-dasharray: 5 4;
      }
      .span {
        fill: var(--colorPaletteRedForeground1);
      }
      .mark {
        fill: var(--colorNeutralBackground1);
        stroke: var(--colorNeutralForeground1);
        stroke-width: 2.5;
      }
      .end {
        text-anchor: end;
      }
      .middle {
        text-anchor: middle;
      }
      .toggle {
        min-height: 28px;
        padding: 2px 8px;
        border: 1px solid var(--colorNeutralStrokeAccessible);
        border-radius: var(--borderRadiusMedium);
        background: none;
        color: inherit;
        font: inherit;
        font-size: var(--fontSizeBase200);
        cursor: pointer;
      }
      .toggle:focus-visible {
        outline: 2px solid var(--colorStrokeFocus2);
        outline-offset: 1px;
      }
    `,
  ];
  static override properties = { picture: { attribute: false }, isTable: { state: true } };

  declare picture: Picture;
  declare isTable: boolean;

  constructor() {
    super();
    this.isTable = false;
  }

  override render(): TemplateResult {
    const { key, title, says } = this.picture;
    return html`<section class="stack tight" aria-labelledby="title-${key}">
      <div class="spread">
        <h3 id="title-${key}">${title}</h3>
        <button
          class="toggle"
          aria-label="${this.isTable ? 'Show as picture' : 'Show as table'}: ${title}"
          @click=${() => {
            this.isTable = !this.isTable;
          }}
        >
          ${this.isTable ? 'Show as picture' : 'Show as table'}
        </button>
      </div>
      <p class="small">${says}</p>
      ${this.isTable ? this.table() : this.drawn()}
    </section>`;
  }

  private drawn(): TemplateResult {
    const { key, title, says, drawing, height } = this.picture;
    return html`<svg
      role="img"
      viewBox="0 0 ${WIDTH} ${height}"
      aria-labelledby="${key}-title ${key}-desc"
    >
      <title id="${key}-title">${title}</title>
      <desc id="${key}-desc">${says}</desc>
      <g aria-hidden="true">${drawing}</g>
    </svg>`;
  }

  private table(): TemplateResult {
    const { title, headers, rows } = this.picture;
    return html`<table>
      <caption class="unseen">
        ${title}
      </caption>
      <thead>
        <tr>
          ${headers.map((header) => html`<th scope="col">${header}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${rows.map(
          ([name, ...cells]) =>
            html`<tr>
              <th scope="row">${name}</th>
              ${cells.map((cell) => html`<td class="figure">${cell}</td>`)}
            </tr>`,
        )}
      </tbody>
    </table>`;
  }
}
customElements.define('pour-picture', PictureView);

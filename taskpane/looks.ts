import { css } from 'lit';
import { buttonSizes, fieldSizes } from './sizes.ts';

/** What all steps share, in Fluent's tokens: type, spacing, fields, cards, tables, notes. */
export const looks = css`
  :host {
    display: block;
    color: var(--colorNeutralForeground1);
    font-family: var(--fontFamilyBase);
    font-size: var(--fontSizeBase300);
    line-height: var(--lineHeightBase300);
    overflow-wrap: anywhere;
  }
  * {
    box-sizing: border-box;
  }
  [hidden] {
    display: none !important;
  }
  h2,
  h3,
  p,
  ul,
  ol,
  dl,
  dd,
  figure {
    margin: 0;
    padding: 0;
  }
  ul,
  ol {
    list-style: none;
  }
  h2 {
    font-size: var(--fontSizeBase500);
    line-height: var(--lineHeightBase500);
    font-weight: var(--fontWeightSemibold);
  }
  h3 {
    font-size: var(--fontSizeBase400);
    line-height: var(--lineHeightBase400);
    font-weight: var(--fontWeightSemibold);
  }
  h2:focus-visible,
  [tabindex='-1']:focus-visible {
    outline: 2px solid var(--colorStrokeFocus2);
    outline-offset: 3px;
    border-radius: var(--borderRadiusSmall);
  }
  .stack {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: 16px;
  }
  .tight {
    gap: 8px;
  }
  .quiet {
    color: var(--colorNeutralForeground2);
  }
  .small {
    font-size: var(--fontSizeBase200);
    line-height: var(--lineHeightBase200);
  }
  .unseen {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  .figure {
    font-variant-numeric: tabular-nums;
    white-space: nowrap;
  }
  /* A place for news takes no room while there is none. */
  .stack > [role='status']:empty {
    margin-top: -16px;
  }
  .actions {
    display: flex;
    flex-wrap: wrap;
    gap: 8px;
  }
  .actions fluent-button[appearance='primary'] {
    flex: 1 1 12em;
  }
  ${buttonSizes}
  /* While it says what is under way it is still read. */
  fluent-button[disabled-focusable] {
    color: var(--colorNeutralForeground2);
  }
`;

/** Fields: native ones, since Fluent's can't tie a sentence about what is wrong to the field. */
export const fieldLooks = css`
  .field {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: 4px;
  }
  .field > label {
    font-weight: var(--fontWeightSemibold);
  }
  .box {
    display: flex;
    align-items: center;
    gap: 8px;
  }
  input,
  select,
  textarea {
    flex: 1 1 auto;
    width: 100%;
    min-width: 0;
    min-height: 36px;
    padding: 4px 10px;
    border: 1px solid var(--colorNeutralStrokeAccessible);
    border-radius: var(--borderRadiusMedium);
    background: var(--colorNeutralBackground1);
    color: inherit;
    font: inherit;
    font-variant-numeric: tabular-nums;
  }
  ${fieldSizes}
  input:focus-visible,
  textarea:focus-visible,
  input[type='date']:focus-within,
  select:focus-visible,
  summary:focus-visible {
    outline: 2px solid var(--colorStrokeFocus2);
    outline-offset: 1px;
  }
  input[type='checkbox'],
  input[type='radio'] {
    flex: none;
    width: 24px;
    min-height: 24px;
    margin: 0;
  }
  input[aria-invalid='true'] {
    border-color: var(--colorPaletteRedForeground1);
  }
  .field.beside {
    grid-template-columns: minmax(0, 1fr) 10.5em;
    align-items: center;
    column-gap: 12px;
  }
  .field.beside > label {
    font-weight: var(--fontWeightRegular);
  }
  .field.beside > p {
    grid-column: 1 / -1;
  }
  .field.beside .unit {
    min-width: 3.5em;
  }
  .box .unit {
    flex: 0 0 auto;
    min-width: 2.5em;
    color: var(--colorNeutralForeground2);
  }
  .error {
    color: var(--colorPaletteRedForeground1);
  }
  .row {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(min(7.5em, 100%), 1fr));
    gap: 12px;
    align-items: start;
  }
  .check {
    display: grid;
    grid-template-columns: auto minmax(0, 1fr);
    gap: 0 10px;
    align-items: center;
    min-height: 40px;
  }
  .check label {
    padding: 10px 0;
    cursor: pointer;
  }
  summary {
    min-height: 28px;
    padding: 4px 0;
    border-radius: var(--borderRadiusSmall);
    color: var(--colorBrandForegroundLink);
    cursor: pointer;
  }
`;

/** Cards and tables of figures. */
export const cardLooks = css`
  .card {
    border: 1px solid var(--colorNeutralStroke2);
    border-radius: var(--borderRadiusLarge);
    background: var(--colorNeutralBackground1);
    overflow: hidden;
  }
  .card > header {
    padding: 10px 12px;
    background: var(--colorNeutralBackground3);
  }
  .card > .body {
    padding: 10px 12px;
  }
  .spread {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    justify-content: space-between;
    gap: 0 12px;
  }
  .spread.centred {
    align-items: center;
  }
  table {
    width: 100%;
    border-collapse: collapse;
  }
  caption {
    padding-bottom: 4px;
    text-align: start;
    font-weight: var(--fontWeightSemibold);
  }
  th,
  td {
    padding: 6px 0 6px 10px;
    border-top: 1px solid var(--colorNeutralStroke2);
    text-align: end;
    vertical-align: top;
    font-weight: var(--fontWeightRegular);
    font-variant-numeric: tabular-nums;
  }
  thead th {
    border-top: 0;
    color: var(--colorNeutralForeground2);
    font-size: var(--fontSizeBase200);
    overflow-wrap: normal;
  }
  th:first-child,
  td:first-child {
    padding-left: 0;
    text-align: start;
  }
  td.figure {
    overflow-wrap: normal;
  }
  /* With large text in a narrow pane a name is not broken into letters, and a unit may go below. */
  table.small th[scope='row'] {
    min-width: 3em;
  }
  table.small .figure {
    overflow-wrap: normal;
    white-space: normal;
  }
  dl {
    display: grid;
    grid-template-columns: auto minmax(0, 1fr);
    gap: 4px 16px;
  }
  dt {
    color: var(--colorNeutralForeground2);
  }
  dd {
    text-align: end;
    font-variant-numeric: tabular-nums;
  }
`;

/** Notes: a bar of colour at the side says what kind, the words say it in full. */
export const noticeLooks = css`
  .notice {
    display: grid;
    gap: 6px;
    padding: 10px 12px;
    border: 1px solid var(--colorNeutralStroke2);
    border-left: 4px solid var(--colorNeutralStrokeAccessible);
    border-radius: var(--borderRadiusMedium);
    background: var(--colorNeutralBackground2);
  }
  .notice.good {
    border-left-color: var(--colorPaletteGreenForeground1);
  }
  .notice.warn {
    border-left-color: var(--colorPaletteDarkOrangeForeground1);
    background: var(--colorPaletteDarkOrangeBackground1);
  }
  .notice.bad {
    border-left-color: var(--colorPaletteRedForeground1);
    background: var(--colorPaletteRedBackground1);
  }
`;

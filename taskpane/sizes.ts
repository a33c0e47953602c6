import { css } from 'lit';

/** Buttons, on a small screen for a thumb, perhaps a wet one: WCAG 2.5.5 asks for 44 px (from memory). */
export const buttonSizes = css`
  fluent-button {
    min-height: 36px;
    max-width: 100%;
  }
  fluent-button[size='small'] {
    min-height: 28px;
  }
  @media (max-width: 760px), (pointer: coarse) {
    fluent-button,
    fluent-button[size='small'] {
      min-height: 44px;
    }
  }
`;

/** Fields of that size there; below 16 px a phone zooms into a field (common practice). */
export const fieldSizes = css`
  @media (max-width: 760px), (pointer: coarse) {
    input:not([type='checkbox'], [type='radio']),
    select {
      min-height: 44px;
      font-size: max(16px, 1em);
    }
  }
`;

import type { Written } from './session.ts';

/** What to tell the maker of a write that did not go through. */
export function sentenceOfWritten(written: Exclude<Written, { kind: 'applied' }>): string {
  switch (written.kind) {
    case 'already there':
      return 'It was in the workbook already, so nothing was written twice.';
    case 'refused':
      return `Nothing was written. ${written.sentence}`;
    case 'unsure':
      return `The workbook broke off: ${written.sentence} Try again: nothing is written twice.`;
  }
}

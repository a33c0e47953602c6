import { expect, it } from 'vitest';
import { asRead } from '../../taskpane/as-read.ts';

it.each([
  ['It came on 2026-11-25.', 'It came on 25 Nov 2026.'],
  ['From 2026-11-25 on, or 2026-02-01?', 'From 25 Nov 2026 on, or 1 Feb 2026?'],
  ['no-costs-2026-11-25.xlsx is here.', 'no-costs-2026-11-25.xlsx is here.'],
  ['2026-11-25.xlsx is here.', '2026-11-25.xlsx is here.'],
  ['Lot L-2026-11-25 is gone.', 'Lot L-2026-11-25 is gone.'],
  ['2026-13-45 is no day.', '2026-13-45 is no day.'],
])('%s', (sentence, read) => {
  expect(asRead(sentence)).toBe(read);
});

import type { Argument } from './record.ts';

/** Arguments that several functions take. */
export const book = {
  kind: 'book',
  help: 'The cell named Book.',
} as const satisfies Argument;

export const design = {
  kind: 'name',
  help: 'Name of the design, as in Designs.',
} as const satisfies Argument;

export const material = {
  kind: 'name',
  help: 'Name of the material, as in Materials.',
} as const satisfies Argument;

export const asOf = {
  kind: 'day',
  help: 'At the end of this day; today if blank.',
  optional: true,
  ifBlank: 'today',
} as const satisfies Argument;

export const from = {
  kind: 'day',
  help: 'As for POUR.SUPPLIES.',
  optional: true,
  ifBlank: 'today',
} as const satisfies Argument;

export const useLeftovers = {
  kind: 'yes/no',
  help: 'As for POUR.SUPPLIES.',
  optional: true,
  ifBlank: false,
} as const satisfies Argument;

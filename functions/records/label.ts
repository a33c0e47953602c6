import type { Records } from './record.ts';
import { book, design } from './shared.ts';

export const labelRecords = {
  INGREDIENTS: {
    help: "The ingredients for a design's label: by weight, colour additives last, allergens above the threshold named.",
    takes: { design, book },
    answers: 'text',
    restsOn: ['book'],
  },
  CHECKS: {
    help: 'Limits, names, net weight and lots of a design as ok, over or unknown; an aid, not an approval.',
    takes: { design, book },
    answers: { columns: ['Check', 'Value', 'Limit', 'Result', 'Source'] },
    restsOn: ['book', 'day'],
  },
} as const satisfies Records;

import type { Records } from './record.ts';
import { book } from './shared.ts';

export const measureRecords = {
  AMOUNT: {
    help: "Converts a quantity between units; between weight, volume and drops by the material's density and drops.",
    takes: {
      quantity: { kind: 'number', help: 'How much.' },
      from: {
        kind: 'unit',
        help: 'Its unit: g, kg, oz, lb, ml, l, fl oz, tsp, drops and others.',
      },
      to: { kind: 'unit', help: 'The unit wanted.' },
      material: {
        kind: 'name',
        help: 'A material, where weight and volume or drops meet; without one, 20 drops are 1 ml.',
        optional: true,
      },
      book: {
        ...book,
        help: 'The cell named Book, with a material.',
        optional: true,
        onlyWith: 'material',
      },
    },
    answers: 'number',
    restsOn: ['book'],
  },
} as const satisfies Records;

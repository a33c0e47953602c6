import type { Argument, Records } from './record.ts';
import { book, design } from './shared.ts';

const barsAtADay = {
  design,
  book,
  bars: {
    kind: 'count',
    help: 'Good bars in the batch; 12 if blank.',
    optional: true,
    ifBlank: 12,
  },
  asOf: {
    kind: 'day',
    help: 'At the costs of this day; today if blank.',
    optional: true,
    ifBlank: 'today',
  },
} as const satisfies Readonly<Record<string, Argument>>;

export const costRecords = {
  COSTPERBAR: {
    help: 'Full cost of one good bar: material, labour, setup, mold wear and overhead, lost bars included.',
    takes: barsAtADay,
    answers: 'number',
    restsOn: ['items', 'day'],
  },
  COSTLINES: {
    help: 'Where the cost of one good bar goes, line by line.',
    takes: barsAtADay,
    answers: { columns: ['Line', 'Per bar', 'Share %'] },
    restsOn: ['items', 'day'],
  },
  BATCHCOST: {
    help: 'Planned against actual for one batch: what it should have used, what it used, and why the cost differs.',
    takes: { batch: { kind: 'name', help: 'Id of the batch, as in Batches.' }, book },
    answers: {
      columns: [
        'Item',
        'Unit',
        'Planned',
        'Used',
        'Planned cost',
        'Used cost',
        'By quantity',
        'By price',
      ],
    },
    restsOn: ['book'],
  },
} as const satisfies Records;

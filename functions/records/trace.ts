import type { Argument, Records } from './record.ts';
import { asOf, book } from './shared.ts';

const lotOrBatch = {
  kind: 'name',
  help: 'A lot from Lots or a batch from Batches.',
} as const satisfies Argument;

export const traceRecords = {
  TRACE: {
    help: 'Follows a lot to every batch it went into, or a batch back to every lot, through leftovers and spares.',
    takes: { lotOrBatch, book },
    answers: { columns: ['Batch', 'Poured', 'Design', 'Bars', 'Item', 'Lot', 'Quantity'] },
    restsOn: ['book'],
  },
  RECALL: {
    help: 'Where everything is that a lot or a batch went into: what is left of the lot, each batch with its own bars made, on the shelf, sold and gone, leftover soap on the shelf, and uses of which nobody knows the lot.',
    takes: { lot: { ...lotOrBatch, said: 'lot or batch' }, book, asOf },
    answers: {
      columns: ['Item', 'Batch', 'Poured', 'How sure', 'Made', 'On hand', 'Sold', 'Gone'],
    },
    restsOn: ['book', 'day'],
  },
} as const satisfies Records;

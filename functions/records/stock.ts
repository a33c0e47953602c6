import type { Argument, Records } from './record.ts';
import { asOf, book } from './shared.ts';

const item = { kind: 'name', help: 'Its name.' } as const satisfies Argument;

export const stockRecords = {
  ONHAND: {
    help: "How much of an item is on hand: a material, a colour's leftover, spare tiles or a design's bars.",
    takes: {
      item: { kind: 'name', help: 'Its name, such as Teal leftover or Teal × Small tiles.' },
      book,
      asOf,
    },
    answers: 'number',
    restsOn: ['items', 'day'],
  },
  STOCKVALUE: {
    help: 'What the stock of an item is worth under the Valuation in Settings.',
    takes: { item, book, asOf },
    answers: 'number',
    restsOn: ['items', 'day'],
  },
  UNITCOST: {
    help: 'What one unit of an item costs: its value over what is on hand, else the newest lot, else the pack price.',
    takes: { item, book, asOf },
    answers: 'number',
    restsOn: ['items', 'day'],
  },
  STOCKLIST: {
    help: 'Everything on the shelf, with its value, reorder point and packs to order now.',
    takes: { book, asOf },
    answers: {
      columns: [
        'Item',
        'Kind',
        'On hand',
        'Unit',
        'Value',
        'Reorder point',
        'Order packs',
        'Earliest best before',
      ],
    },
    restsOn: ['book', 'day'],
  },
} as const satisfies Records;

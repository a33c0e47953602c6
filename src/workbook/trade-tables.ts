import { sellingWays } from '../domain/book/words.ts';
import { choice, money, number, required, text } from './column.ts';
import { table } from './table.ts';

/** Where bars are sold, what is sold together, and who shares: tables that a workbook may do without. */
export const tradeTables = {
  places: table('Places', 'Where you sell, and what each place takes.', {
    place: required(text('Place', 'A name of your own, each once.')),
    sellsAs: required(choice('Sells as', sellingWays, 'How it sells your bars.')),
    commissionPercent: number(
      'Commission %',
      { min: 0, max: 100, format: 'percent', zero: 'as blank' },
      'Its part of the price the buyer paid.',
    ),
    feePercent: number(
      'Fee %',
      { min: 0, below: 100, format: 'percent', zero: 'as blank' },
      'Fees on the price the buyer paid, where a sale has none of its own.',
    ),
    feeFixed: money('Fee fixed', 'Fixed fee for each line of Sales.', 'as blank'),
    postageEach: money('Postage each', 'What you pay to send one bar.', 'as blank'),
    leastBars: number(
      'Least bars',
      { min: 0, whole: true, zero: 'as blank' },
      'Fewest bars of one order.',
    ),
    taxPercent: number(
      'Tax %',
      { min: 0, below: 100, format: 'percent' },
      'Sales tax there; blank takes that of the Settings.',
    ),
  }),
  sets: table('Sets', 'Bars sold together: one line for each thing in a set.', {
    set: required(text('Set', 'A name of your own.')),
    item: required(text('Item', 'A design, or a packaging material such as the box.')),
    perSet: required(number('Per set', { above: 0 }, 'How much of it in one set.')),
    price: money('Price', 'What you ask for the set, on one of its lines.', 'as blank'),
  }),
  partners: table('Partners', 'Who shares in what the bars bring home.', {
    partner: required(text('Partner', 'A name, each once.')),
    sharePercent: required(
      number(
        'Share %',
        { min: 1, max: 100, format: 'percent' },
        'Their part; all together are 100.',
      ),
    ),
  }),
} as const;

import type { Records } from './record.ts';
import { book } from './shared.ts';

export const sellRecords = {
  PRICE: {
    help: 'The price to ask, tax included, that leaves the margin after tax and fees.',
    takes: {
      cost: { kind: 'number', help: 'Full cost of what is sold, such as POUR.COSTPERBAR.' },
      marginPercent: {
        kind: 'percent',
        help: 'Profit wanted, in percent of the price without tax.',
      },
      feePercent: {
        kind: 'percent',
        help: 'Card or market fee, in percent of the price paid; 0 if blank.',
        optional: true,
        ifBlank: 0,
      },
      feeFixed: {
        kind: 'number',
        help: 'Fixed fee for each payment; 0 if blank.',
        optional: true,
        ifBlank: 0,
      },
      taxPercent: {
        kind: 'percent',
        help: 'Sales tax in percent; 0 if blank.',
        optional: true,
        ifBlank: 0,
      },
      ending: {
        kind: 'number',
        help: 'What the price ends in, such as 0.95; to the cent if blank.',
        optional: true,
      },
    },
    answers: 'number',
    restsOn: [],
  },
  BREAKEVEN: {
    help: 'Whole units to sell before the fixed cost is earned back.',
    takes: {
      fixedCost: {
        kind: 'number',
        help: 'What it costs however many are sold, such as the stall.',
      },
      price: { kind: 'number', help: 'What one brings in, without tax and fees.' },
      costPerUnit: { kind: 'number', help: 'What one costs.' },
    },
    answers: 'number',
    restsOn: [],
  },
  FAIR: {
    help: 'What a fair brought home, from its lines in Sales and its costs in Fairs.',
    takes: { fair: { kind: 'name', help: 'Name of the fair, as in Fairs.' }, book },
    answers: { columns: ['Line', 'Amount'] },
    restsOn: ['book'],
  },
  FAIRLOAD: {
    help: 'What to bring to a fair of each design, from what past fairs sold, and what to expect of it.',
    takes: { fair: { kind: 'name', help: 'Name of the fair, as in Fairs.' }, book },
    answers: {
      columns: [
        'Design',
        'Bring',
        'Have',
        'Pour',
        'Sells out %',
        'Expected sold',
        'Expected profit',
      ],
    },
    restsOn: ['book'],
  },
} as const satisfies Records;

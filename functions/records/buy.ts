import type { Argument, Records } from './record.ts';
import { book, from, material, useLeftovers } from './shared.ts';

const lookedBack = {
  material,
  book,
  asOf: {
    kind: 'day',
    help: 'Looks back from this day; today if blank.',
    optional: true,
    ifBlank: 'today',
  },
} as const satisfies Readonly<Record<string, Argument>>;

export const buyRecords = {
  REORDERPOINT: {
    help: 'Stock of a material at which to order: mean use over the lead time plus safety stock.',
    takes: lookedBack,
    answers: 'number',
    restsOn: ['items', 'day'],
  },
  SERVICECHECK: {
    help: "Tries a material's reorder point on simulated years of its own use, beside the point that those days ask for.",
    takes: lookedBack,
    answers: { columns: ['Line', 'Usual formula', 'Own days'] },
    restsOn: ['book', 'day'],
  },
  SAFETYSTOCK: {
    help: 'Stock to hold against chance over the lead time.',
    takes: {
      servicePercent: {
        kind: 'percent from 1',
        help: 'How often stock should last until the order comes, such as 95.',
      },
      sdDailyUse: {
        kind: 'number',
        help: "Standard deviation of one day's use.",
        said: 'sd of daily use',
      },
      leadDays: { kind: 'number', help: 'Days from ordering to having it.' },
      meanDailyUse: {
        kind: 'number',
        help: 'Mean use a day; needed where lead days vary.',
        optional: true,
      },
      sdLeadDays: {
        kind: 'number',
        help: 'Standard deviation of the lead days; 0 if blank.',
        optional: true,
        ifBlank: 0,
        said: 'sd of lead days',
      },
    },
    answers: 'number',
    restsOn: [],
  },
  ORDERSIZE: {
    help: 'The order size at which ordering and holding together cost least (economic order quantity).',
    takes: {
      yearlyUse: { kind: 'number', help: 'Units used in a year.' },
      costPerOrder: { kind: 'number', help: 'What placing one order costs.' },
      holdingPerUnit: {
        kind: 'number',
        help: 'What holding one unit for a year costs.',
        said: 'holding cost per unit',
      },
    },
    answers: 'number',
    restsOn: [],
  },
  SUPPLIES: {
    help: 'What to buy for the plan: what it takes, what is there, packs, and the last day to order.',
    takes: {
      book,
      from: {
        ...from,
        help: 'Plan lines ready on this day or later, with its stock; today if blank.',
      },
      useLeftovers: {
        ...useLeftovers,
        help: 'TRUE melts and lays leftovers and spares first, those of earlier lines too; FALSE if blank.',
      },
    },
    answers: { columns: ['Material', 'Gross', 'On hand', 'Net', 'Packs', 'Order by', 'Cost'] },
    restsOn: ['book', 'day'],
  },
  ORDERPLAN: {
    help: 'What to order together at each supplier and by when, carriage and prices of larger orders counted; never later than POUR.SUPPLIES says.',
    takes: { book, from, useLeftovers },
    answers: { columns: ['Supplier', 'Order by', 'Material', 'Packs', 'Cost', 'Carriage'] },
    restsOn: ['book', 'day'],
  },
  CASHBYWEEK: {
    help: 'The money that the orders for the plan take, week by week; what should be ordered already falls in the first.',
    takes: { book, from, useLeftovers },
    answers: { columns: ['Week from Monday', 'Money', 'Of it late', 'In all'] },
    restsOn: ['book', 'day'],
  },
} as const satisfies Records;

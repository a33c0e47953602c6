import { money, number, required, text } from './column.ts';

/** The terms of those one buys from: what an order costs beside the goods. */
export const supplierColumns = {
  supplier: required(text('Supplier', 'As in Materials, each once.')),
  carriage: money('Carriage', 'What bringing one order costs.', 'as blank'),
  freeFrom: number(
    'Free from',
    { above: 0, format: 'money' },
    'Goods of one order from which carriage is free.',
  ),
  leadDays: number(
    'Lead days',
    { min: 0, max: 3650 },
    'Days from ordering to having it, for materials whose own are blank.',
  ),
};

/** Prices that fall with the number of packs: all packs of an order have the price of its number. */
export const priceBreakColumns = {
  material: required(text('Material', 'As in Materials; a line for each price.')),
  fromPacks: required(
    number('From packs', { above: 0, whole: true }, 'Fewest packs in one order at this price.'),
  ),
  packPrice: required(money('Pack price', 'What each pack of such an order costs.')),
};

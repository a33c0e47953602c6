import type { RowOfCells } from '../blocks/table-rows.ts';
import { suppliers } from './materials.ts';

/** Invented, as all of this folder: what each made-up supplier asks for bringing an order. */
export const demoSuppliers: readonly RowOfCells<'suppliers'>[] = [
  { supplier: suppliers.bases, carriage: 9.8, freeFrom: 140, leadDays: 7 },
  { supplier: suppliers.pigments, carriage: 4.6, freeFrom: 45, leadDays: 10 },
  { supplier: suppliers.oils, carriage: 5.4, freeFrom: 70, leadDays: 6 },
  { supplier: suppliers.packing, carriage: 7.9, freeFrom: 90, leadDays: 14 },
];

/** And what each asks for a pack where an order has more of them. */
export const demoPriceBreaks: readonly RowOfCells<'priceBreaks'>[] = [
  { material: 'Clear base', fromPacks: 3, packPrice: 28.2 },
  { material: 'Clear base', fromPacks: 6, packPrice: 26.9 },
  { material: 'White base', fromPacks: 3, packPrice: 30.4 },
  { material: 'Bar box', fromPacks: 5, packPrice: 14.1 },
];

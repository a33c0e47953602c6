import type { RowOfCells } from '../blocks/table-rows.ts';

/**
 * Everything in this folder is invented: the workshop, its suppliers, prices, bars and buyers.
 * Densities and label names are plausible ones from memory, not any supplier's figures.
 */
export const suppliers = {
  bases: 'Made-up Base Co.',
  pigments: 'Nowhere Pigments',
  oils: 'Invented Oils Ltd.',
  packing: 'Pretend Packaging',
} as const;

const base = { kind: 'base', unit: 'g', packSize: 4000, supplier: suppliers.bases } as const;
const drops = {
  kind: 'colourant',
  unit: 'ml',
  densityGPerMl: 1.15,
  dropsPerMl: 26,
  packSize: 60,
  leadDays: 10,
  leadDaysSd: 3,
  maxPercent: 4,
  supplier: suppliers.pigments,
} as const;
const oil = {
  kind: 'fragrance',
  unit: 'ml',
  packSize: 75,
  leadDays: 6,
  leadDaysSd: 2,
  maxPercent: 3,
  supplier: suppliers.oils,
} as const;
const packing = {
  kind: 'packaging',
  unit: 'each',
  leadDays: 14,
  leadDaysSd: 3,
  supplier: suppliers.packing,
} as const;

export const demoMaterials: readonly RowOfCells<'materials'>[] = [
  {
    material: 'Clear base',
    ...base,
    densityGPerMl: 1.05,
    packPrice: 29.6,
    leadDays: 7,
    leadDaysSd: 2,
    inci: 'Aqua 35; Glycerin 22; Sodium Stearate 19; Sorbitol 15; Sodium Laurate 9',
  },
  {
    material: 'White base',
    ...base,
    densityGPerMl: 1.06,
    packPrice: 31.8,
    leadDays: 7,
    leadDaysSd: 2,
    inci: 'Aqua 34; Glycerin 22; Sodium Stearate 19; Sorbitol 15; Sodium Laurate 9; CI 77891 1',
  },
  { material: 'Slate drops', ...drops, packPrice: 6.4, inci: 'Glycerin 72; CI 77499 28' },
  { material: 'Teal drops', ...drops, packPrice: 7.6, inci: 'Glycerin 80; CI 77288 20' },
  {
    material: 'Amber drops',
    ...drops,
    packPrice: 6.9,
    inci: 'Glycerin 77; CI 77492 16; CI 77491 7',
  },
  {
    material: 'Driftwood drops',
    ...drops,
    packPrice: 7.1,
    inci: 'Glycerin 79; CI 77491 10; CI 77499 6; CI 77492 5',
  },
  { material: 'Foam white', ...drops, packPrice: 5.7, inci: 'Glycerin 66; CI 77891 34' },
  {
    material: 'Sweet orange oil',
    ...oil,
    densityGPerMl: 0.845,
    dropsPerMl: 27,
    packPrice: 10.4,
    inci: 'Citrus Aurantium Dulcis Peel Oil',
    allergens: 'Limonene 93; Linalool 0.5; Citral 0.2',
  },
  {
    material: 'Lavender oil',
    ...oil,
    densityGPerMl: 0.885,
    dropsPerMl: 31,
    packPrice: 17.2,
    inci: 'Lavandula Angustifolia Oil',
    allergens: 'Linalool 31; Limonene 0.6; Geraniol 0.3; Coumarin 0.1',
  },
  {
    material: 'Glycerin',
    kind: 'extra',
    unit: 'ml',
    densityGPerMl: 1.26,
    packSize: 200,
    packPrice: 4.6,
    leadDays: 7,
    leadDaysSd: 2,
    inci: 'Glycerin',
    supplier: suppliers.bases,
  },
  {
    material: 'Rubbing alcohol',
    kind: 'extra',
    unit: 'ml',
    densityGPerMl: 0.79,
    packSize: 400,
    packPrice: 5.3,
    leadDays: 7,
    leadDaysSd: 2,
    inci: 'Alcohol Denat.',
    supplier: suppliers.bases,
    staysPercent: 0,
  },
  {
    material: 'Pearl mica',
    kind: 'extra',
    unit: 'g',
    packSize: 20,
    packPrice: 6.4,
    leadDays: 14,
    leadDaysSd: 3,
    maxPercent: 2,
    inci: 'Mica 70; CI 77891 30',
    supplier: suppliers.pigments,
  },
  { material: 'Bar box', ...packing, packSize: 40, packPrice: 15.2, leastPacks: 2 },
  { material: 'Guest sleeve', ...packing, packSize: 60, packPrice: 10.8 },
  { material: 'Glassine wrap', ...packing, packSize: 120, packPrice: 7.4 },
  { material: 'Label', ...packing, packSize: 150, packPrice: 16.5, servicePercent: 98 },
];

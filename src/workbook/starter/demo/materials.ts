import type { RowOfCells } from '../table-rows.ts';

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

const base = { kind: 'base', unit: 'g', packSize: 5000, supplier: suppliers.bases } as const;
const drops = {
  kind: 'colourant',
  unit: 'ml',
  densityGPerMl: 1.2,
  dropsPerMl: 24,
  packSize: 100,
  leadDays: 9,
  leadDaysSd: 3,
  maxPercent: 4,
  supplier: suppliers.pigments,
} as const;
const oil = {
  kind: 'fragrance',
  unit: 'ml',
  packSize: 100,
  leadDays: 7,
  leadDaysSd: 2,
  maxPercent: 3,
  supplier: suppliers.oils,
} as const;
const packing = {
  kind: 'packaging',
  unit: 'each',
  leadDays: 12,
  leadDaysSd: 4,
  supplier: suppliers.packing,
} as const;

export const demoMaterials: readonly RowOfCells<'materials'>[] = [
  {
    material: 'Clear base',
    ...base,
    densityGPerMl: 1.05,
    packPrice: 38.5,
    leadDays: 6,
    leadDaysSd: 2,
    inci: 'Aqua 34; Glycerin 24; Sodium Stearate 18; Sorbitol 14; Sodium Laurate 10',
  },
  {
    material: 'White base',
    ...base,
    densityGPerMl: 1.06,
    packPrice: 41,
    leadDays: 6,
    leadDaysSd: 2,
    inci: 'Aqua 34; Glycerin 23; Sodium Stearate 18; Sorbitol 14; Sodium Laurate 10; CI 77891 1',
  },
  { material: 'Slate drops', ...drops, packPrice: 9.8, inci: 'Glycerin 75; CI 77499 25' },
  { material: 'Teal drops', ...drops, packPrice: 11.4, inci: 'Glycerin 78; CI 77288 22' },
  {
    material: 'Amber drops',
    ...drops,
    packPrice: 10.2,
    inci: 'Glycerin 76; CI 77492 18; CI 77491 6',
  },
  {
    material: 'Driftwood drops',
    ...drops,
    packPrice: 10.2,
    inci: 'Glycerin 80; CI 77491 9; CI 77499 6; CI 77492 5',
  },
  { material: 'Foam white', ...drops, packPrice: 8.6, inci: 'Glycerin 70; CI 77891 30' },
  {
    material: 'Sweet orange oil',
    ...oil,
    densityGPerMl: 0.845,
    dropsPerMl: 28,
    packPrice: 12.9,
    inci: 'Citrus Aurantium Dulcis Peel Oil',
    allergens: 'Limonene 94; Linalool 0.4; Citral 0.2',
  },
  {
    material: 'Lavender oil',
    ...oil,
    densityGPerMl: 0.885,
    dropsPerMl: 30,
    packPrice: 21.5,
    inci: 'Lavandula Angustifolia Oil',
    allergens: 'Linalool 33; Limonene 0.5; Geraniol 0.4; Coumarin 0.1',
  },
  {
    material: 'Glycerin',
    kind: 'extra',
    unit: 'ml',
    densityGPerMl: 1.26,
    packSize: 250,
    packPrice: 5.4,
    leadDays: 6,
    leadDaysSd: 2,
    inci: 'Glycerin',
    supplier: suppliers.bases,
  },
  {
    material: 'Rubbing alcohol',
    kind: 'extra',
    unit: 'ml',
    densityGPerMl: 0.79,
    packSize: 500,
    packPrice: 6.2,
    leadDays: 6,
    leadDaysSd: 2,
    inci: 'Alcohol Denat.',
    supplier: suppliers.bases,
  },
  {
    material: 'Pearl mica',
    kind: 'extra',
    unit: 'g',
    packSize: 25,
    packPrice: 7.5,
    leadDays: 9,
    leadDaysSd: 3,
    maxPercent: 2,
    inci: 'Mica 72; CI 77891 28',
    supplier: suppliers.pigments,
  },
  { material: 'Bar box', ...packing, packSize: 50, packPrice: 17.5, leastPacks: 2 },
  { material: 'Glassine wrap', ...packing, packSize: 100, packPrice: 6.8 },
  { material: 'Label', ...packing, packSize: 100, packPrice: 12.4, servicePercent: 98 },
];

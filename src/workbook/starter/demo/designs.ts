import type { RowOfCells } from '../table-rows.ts';
import { barMold, heronMold, lighthouseMold, tileMold } from './recipes.ts';

export const lanternQuay = 'Lantern Quay';
export const tidePool = 'Tide Pool';
export const heronFlats = 'Heron Flats';
export const harbourDusk = 'Harbour Dusk';
export const winterBeacon = 'Winter Beacon';
export const sandspit = 'Sandspit';

const mosaicBar = {
  barMold,
  labourMinutes: 11,
  setupMinutes: 50,
  yieldPercent: 96,
  netG: 83,
  handsOffHours: 24,
} as const;

export const demoDesigns: readonly RowOfCells<'designs'>[] = [
  { design: lanternQuay, ...mosaicBar, price: 11.5, netG: 88 },
  { design: tidePool, ...mosaicBar, price: 10.5 },
  { design: heronFlats, ...mosaicBar, price: 11.5, netG: 89 },
  { design: harbourDusk, ...mosaicBar, price: 10.5 },
  {
    design: winterBeacon,
    barMold,
    labourMinutes: 6,
    setupMinutes: 35,
    yieldPercent: 96,
    price: 8.5,
    netG: 82,
    handsOffHours: 24,
  },
  { design: sandspit, ...mosaicBar, labourMinutes: 9, price: 9.5 },
];

type Part = 'tiles' | 'embed' | 'pour' | 'scent' | 'paint' | 'pack';
type Line = readonly [
  layer: string,
  part: Part,
  item: string,
  perBar: number,
  per: 'each' | 'g' | 'ml' | '%',
  mold?: string,
];

const tiles = (item: string, count: number): Line => [
  '1 Mosaic',
  'tiles',
  item,
  count,
  'each',
  tileMold,
];
const embed = (item: string, mold: string): Line => ['2 Embed', 'embed', item, 1, 'each', mold];
/** The seal takes 15 to 20 g and the fill 40 g a bar (common practice). */
const pours = (seal: string, fill: string): Line[] => [
  ['3 Seal', 'pour', seal, 18, 'g'],
  ['4 Fill', 'pour', fill, 40, 'g'],
];
/** Paint is 1 part glycerin to 2 parts alcohol (common practice), with a little mica. */
const paint: readonly Line[] = [
  ['6 Paint', 'paint', 'Glycerin', 0.3, 'ml'],
  ['6 Paint', 'paint', 'Rubbing alcohol', 0.6, 'ml'],
  ['6 Paint', 'paint', 'Pearl mica', 0.05, 'g'],
];
const pack: readonly Line[] = [
  ['7 Pack', 'pack', 'Glassine wrap', 1, 'each'],
  ['7 Pack', 'pack', 'Bar box', 1, 'each'],
  ['7 Pack', 'pack', 'Label', 1, 'each'],
];
const scent = (item: string): Line => ['5 Scent', 'scent', item, 1.5, '%'];

const layersOf = (design: string, lines: readonly Line[]): RowOfCells<'layers'>[] =>
  lines.map(([layer, part, item, perBar, per, mold = '']) => ({
    design,
    layer,
    part,
    item,
    mold,
    perBar,
    per,
  }));

/** Each mosaic has the 36 tiles of a 6 × 6 cm bar (common practice). */
export const demoLayers: readonly RowOfCells<'layers'>[] = [
  ...layersOf(lanternQuay, [
    tiles('Slate', 18),
    tiles('Amber', 12),
    tiles('Foam', 6),
    embed('Foam', lighthouseMold),
    ...pours('Clear base', 'Slate'),
    scent('Sweet orange oil'),
    ...paint,
    ...pack,
  ]),
  ...layersOf(tidePool, [
    tiles('Teal', 15),
    tiles('Rockpool', 12),
    tiles('Foam', 9),
    ...pours('Clear base', 'White base'),
    scent('Lavender oil'),
    ...pack,
  ]),
  ...layersOf(heronFlats, [
    tiles('Driftwood', 18),
    tiles('Foam', 12),
    tiles('Slate', 6),
    embed('Slate', heronMold),
    ...pours('Clear base', 'Driftwood'),
    scent('Lavender oil'),
    ...pack,
  ]),
  ...layersOf(harbourDusk, [
    tiles('Dusk', 18),
    tiles('Rockpool', 9),
    tiles('Amber', 9),
    ...pours('Clear base', 'White base'),
    scent('Sweet orange oil'),
    ...paint,
    ...pack,
  ]),
  ...layersOf(winterBeacon, [
    embed('Amber', lighthouseMold),
    ['3 Seal', 'pour', 'Clear base', 20, 'g'],
    ['4 Fill', 'pour', 'Teal', 57, 'g'],
    scent('Sweet orange oil'),
    ...pack,
  ]),
  ...layersOf(sandspit, [
    tiles('Driftwood', 24),
    tiles('Amber', 12),
    ...pours('Clear base', 'White base'),
    ['5 Scent', 'scent', 'Lavender oil', 0.8, '%'],
    ['5 Scent', 'scent', 'Sweet orange oil', 0.4, '%'],
    ...pack,
  ]),
];

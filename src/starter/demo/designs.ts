import type { RowOfCells } from '../blocks/table-rows.ts';
import { guestMold, heronMold, largeTray, lighthouseMold, longMold, smallTray } from './recipes.ts';

export const lanternQuay = 'Lantern Quay';
export const tidePool = 'Tide Pool';
export const heronFlats = 'Heron Flats';
export const harbourDusk = 'Harbour Dusk';
export const winterBeacon = 'Winter Beacon';
export const sandspit = 'Sandspit';

/** Five tiles by eight, from the small tray. */
const longBar = {
  barMold: longMold,
  labourMinutes: 13,
  setupMinutes: 45,
  yieldPercent: 95,
  handsOffHours: 20,
} as const;
/** A small one beside it; as a mosaic four tiles by four, from the large tray. */
const guestBar = { ...longBar, barMold: guestMold, setupMinutes: 30 } as const;

export const demoDesigns: readonly RowOfCells<'designs'>[] = [
  { design: lanternQuay, ...longBar, price: 14, netG: 117 },
  { design: tidePool, ...longBar, price: 12.5, netG: 114 },
  { design: heronFlats, ...longBar, price: 13.5, netG: 116 },
  { design: harbourDusk, ...longBar, price: 12.5, netG: 113 },
  { design: winterBeacon, ...guestBar, labourMinutes: 5, price: 6.5, netG: 62 },
  { design: sandspit, ...guestBar, labourMinutes: 7, price: 7.5, netG: 62 },
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

const tilesOf =
  (tray: string) =>
  (item: string, count: number): Line => ['1 Mosaic', 'tiles', item, count, 'each', tray];
const small = tilesOf(smallTray);
const large = tilesOf(largeTray);
const embed = (item: string, mold: string): Line => ['2 Embed', 'embed', item, 1, 'each', mold];
const seal = (item: string, g: number): Line => ['3 Seal', 'pour', item, g, 'g'];
const fill = (item: string, g: number): Line => ['4 Fill', 'pour', item, g, 'g'];
const scent = (item: string, percent: number): Line => ['5 Scent', 'scent', item, percent, '%'];
/** Paint is 1 part glycerin to 2 parts alcohol (common practice), with a little mica. */
const paint: readonly Line[] = [
  ['6 Paint', 'paint', 'Glycerin', 0.4, 'ml'],
  ['6 Paint', 'paint', 'Rubbing alcohol', 0.8, 'ml'],
  ['6 Paint', 'paint', 'Pearl mica', 0.06, 'g'],
];
const packIn = (box: string): readonly Line[] => [
  ['7 Pack', 'pack', 'Glassine wrap', 1, 'each'],
  ['7 Pack', 'pack', box, 1, 'each'],
  ['7 Pack', 'pack', 'Label', 1, 'each'],
];
const packLong = packIn('Bar box');
const packGuest = packIn('Guest sleeve');

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

export const demoLayers: readonly RowOfCells<'layers'>[] = [
  ...layersOf(lanternQuay, [
    small('Slate', 17),
    small('Amber', 13),
    small('Foam', 10),
    embed('Foam', lighthouseMold),
    seal('Clear base', 27),
    fill('Slate', 54),
    scent('Sweet orange oil', 1.2),
    ...paint,
    ...packLong,
  ]),
  ...layersOf(tidePool, [
    small('Teal', 18),
    small('Rockpool', 13),
    small('Foam', 9),
    seal('Clear base', 28),
    fill('White base', 56),
    scent('Lavender oil', 1.2),
    ...packLong,
  ]),
  ...layersOf(heronFlats, [
    small('Driftwood', 19),
    small('Foam', 14),
    small('Slate', 7),
    embed('Slate', heronMold),
    seal('Clear base', 26),
    fill('Driftwood', 53),
    scent('Lavender oil', 1.3),
    ...packLong,
  ]),
  ...layersOf(harbourDusk, [
    small('Dusk', 21),
    small('Rockpool', 8),
    small('Amber', 11),
    seal('Clear base', 27),
    fill('White base', 55),
    scent('Sweet orange oil', 1.5),
    ...paint,
    ...packLong,
  ]),
  ...layersOf(winterBeacon, [
    embed('Amber', lighthouseMold),
    seal('Clear base', 15),
    fill('Teal', 42),
    scent('Sweet orange oil', 1.3),
    ...packGuest,
  ]),
  ...layersOf(sandspit, [
    large('Driftwood', 10),
    large('Amber', 6),
    seal('Clear base', 12),
    fill('White base', 34),
    scent('Lavender oil', 0.7),
    scent('Sweet orange oil', 0.5),
    ...packGuest,
  ]),
];

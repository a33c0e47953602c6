import type { RowOfCells } from '../blocks/table-rows.ts';

export const smallTray = 'Small tile tray';
export const largeTray = 'Large tile tray';
export const lighthouseMold = 'Lighthouse mold';
export const heronMold = 'Heron mold';
export const longMold = 'Long bar mold';
export const guestMold = 'Guest bar mold';

/** Between the densities of the clear and the white base in Materials. */
const SOAP_G_PER_ML = 1.055;

/** Whole grams that fill so many cavities of so many millimetres. */
const fillOf = (cavities: number, [width, length, depth]: readonly [number, number, number]) => ({
  cavities,
  fillG: Math.round(((cavities * width * length * depth) / 1000) * SOAP_G_PER_ML),
});

/** Both mosaics lie in their bar mold with some half a millimetre of seal between the tiles. */
export const demoMolds: readonly RowOfCells<'molds'>[] = [
  {
    mold: smallTray,
    makes: 'tiles',
    ...fillOf(60, [11, 11, 6]),
    scrapeG: 2,
    sections: 4,
    price: 21.5,
    lifeFills: 350,
    setMinutes: 35,
  },
  {
    mold: largeTray,
    makes: 'tiles',
    ...fillOf(28, [13, 13, 6]),
    scrapeG: 1.5,
    sections: 3,
    price: 18,
    lifeFills: 350,
    setMinutes: 35,
  },
  {
    mold: lighthouseMold,
    makes: 'embeds',
    cavities: 4,
    fillG: 24,
    scrapeG: 1,
    sections: 3,
    price: 16.8,
    lifeFills: 220,
    setMinutes: 40,
  },
  {
    mold: heronMold,
    makes: 'embeds',
    cavities: 5,
    fillG: 35,
    scrapeG: 1.5,
    sections: 2,
    price: 17.6,
    lifeFills: 220,
    setMinutes: 45,
  },
  {
    mold: longMold,
    makes: 'bars',
    ...fillOf(5, [58, 92, 22]),
    sections: 4,
    price: 38,
    lifeFills: 450,
    setMinutes: 150,
  },
  {
    mold: guestMold,
    makes: 'bars',
    ...fillOf(8, [56, 56, 20]),
    sections: 3,
    price: 29,
    lifeFills: 450,
    setMinutes: 110,
  },
];

type Line = readonly [ingredient: string, amount: number, measure: 'g' | 'ml' | 'drops' | 'parts'];

const recipe = (colour: string, ...lines: readonly Line[]): RowOfCells<'colours'>[] =>
  lines.map(([ingredient, amount, measure]) => ({ colour, ingredient, amount, measure }));

export const demoColours: readonly RowOfCells<'colours'>[] = [
  ...recipe('Slate', ['Clear base', 150, 'g'], ['Slate drops', 31, 'drops']),
  ...recipe('Teal', ['Clear base', 150, 'g'], ['Teal drops', 28, 'drops']),
  ...recipe('Amber', ['Clear base', 120, 'g'], ['Amber drops', 21, 'drops']),
  ...recipe('Driftwood', ['White base', 120, 'g'], ['Driftwood drops', 23, 'drops']),
  ...recipe('Foam', ['White base', 80, 'g'], ['Foam white', 0.9, 'ml']),
  ...recipe('Rockpool', ['Teal', 14, 'g'], ['Slate', 6, 'g']),
  // A blend of a blend.
  ...recipe('Dusk', ['Rockpool', 3, 'parts'], ['Amber', 4, 'parts']),
];

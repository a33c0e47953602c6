import type { RowOfCells } from '../table-rows.ts';

export const tileMold = 'Mosaic section';
export const lighthouseMold = 'Lighthouse mold';
export const heronMold = 'Heron mold';
export const barMold = 'Six-cm bar mold';

export const demoMolds: readonly RowOfCells<'molds'>[] = [
  {
    // 25 g fill one section of 36 tiles of 1 × 1 cm (common practice).
    mold: tileMold,
    makes: 'tiles',
    cavities: 36,
    fillG: 25,
    scrapeG: 1,
    sections: 6,
    price: 24,
    lifeFills: 400,
    setMinutes: 40,
  },
  {
    mold: lighthouseMold,
    makes: 'embeds',
    cavities: 6,
    fillG: 30,
    scrapeG: 1,
    sections: 2,
    price: 19.5,
    lifeFills: 250,
    setMinutes: 45,
  },
  {
    mold: heronMold,
    makes: 'embeds',
    cavities: 6,
    fillG: 36,
    scrapeG: 1,
    sections: 2,
    price: 19.5,
    lifeFills: 250,
    setMinutes: 45,
  },
  {
    mold: barMold,
    makes: 'bars',
    cavities: 6,
    fillG: 510,
    sections: 4,
    price: 32,
    lifeFills: 500,
    setMinutes: 120,
  },
];

type Line = readonly [ingredient: string, amount: number, measure: 'g' | 'ml' | 'drops' | 'parts'];

const recipe = (colour: string, ...lines: readonly Line[]): RowOfCells<'colours'>[] =>
  lines.map(([ingredient, amount, measure]) => ({ colour, ingredient, amount, measure }));

export const demoColours: readonly RowOfCells<'colours'>[] = [
  ...recipe('Slate', ['Clear base', 100, 'g'], ['Slate drops', 18, 'drops']),
  ...recipe('Teal', ['Clear base', 100, 'g'], ['Teal drops', 22, 'drops']),
  ...recipe('Amber', ['Clear base', 100, 'g'], ['Amber drops', 20, 'drops']),
  ...recipe('Driftwood', ['White base', 100, 'g'], ['Driftwood drops', 16, 'drops']),
  ...recipe('Foam', ['White base', 100, 'g'], ['Foam white', 1, 'ml']),
  // A 25 g blend as 15 g + 10 g (common practice); Dusk is a blend of a blend.
  ...recipe('Rockpool', ['Teal', 15, 'g'], ['Slate', 10, 'g']),
  ...recipe('Dusk', ['Rockpool', 2, 'parts'], ['Amber', 3, 'parts']),
];

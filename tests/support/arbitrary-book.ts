import fc from 'fast-check';
import type { Cell } from '../../src/workbook/port.ts';
import { table, type Tables } from './small-book.ts';

/** The first day of every history, as a serial number: 1 January 2024. */
export const FIRST_DAY = 45_292;
/** A day after everything that happens in them. */
export const LAST_DAY = FIRST_DAY + 400;

/** A number of so many decimals, as a maker types it. */
const decimal = (least: number, most: number, decimals: number): fc.Arbitrary<number> =>
  fc
    .integer({ min: Math.ceil(least * 10 ** decimals), max: Math.floor(most * 10 ** decimals) })
    .map((whole) => Number((whole / 10 ** decimals).toFixed(decimals)));

const blankOr = <T extends Cell>(value: fc.Arbitrary<T>): fc.Arbitrary<Cell> =>
  fc.oneof(fc.constant<Cell>(''), value);

/** Names that sort alike, hold signs, or look like formulas: all must stay what they are. */
const bases = ['Clear base', 'Crème base', 'Creme base'];
const colourants = ['Mica 2', 'Mica 02', 'Liquid × red'];
const others = { scent: 'Sweet, orange', paint: '=1+1', pack: 'Box "small"' };
const colourNames = ['Slate', 'Teal', 'Fog', '-Foam', 'Tide 10', 'Tide 2'];

const materialRow = (name: string, kind: string, unit: string): fc.Arbitrary<Cell[]> =>
  fc.tuple(
    fc.constant(name),
    fc.constant(kind),
    fc.constant(unit),
    decimal(0.7, 1.6, 2),
    blankOr(decimal(15, 40, 0)),
    decimal(1, 5000, 0),
    decimal(0.5, 90, 2),
    blankOr(fc.integer({ min: 0, max: 30 })),
    blankOr(decimal(0, 6, 1)),
    blankOr(decimal(50, 99.9, 1)),
  );

const materials: fc.Arbitrary<Cell[][]> = fc.tuple(
  ...bases.map((name) => materialRow(name, 'base', 'g')),
  ...colourants.map((name, at) => materialRow(name, 'colourant', at === 1 ? 'ml' : 'g')),
  materialRow(others.scent, 'fragrance', 'ml'),
  materialRow(others.paint, 'extra', 'g'),
  materialRow(others.pack, 'packaging', 'each'),
);

const materialNames = [...bases, ...colourants, ...Object.values(others)];

const lots: fc.Arbitrary<Cell[][]> = fc
  .tuple(
    ...materialNames.map((name) =>
      fc.array(
        fc.tuple(
          fc.integer({ min: 0, max: 60 }).map((day) => FIRST_DAY + day),
          name.startsWith('Box') ? decimal(1, 60, 0) : decimal(5, 900, 3),
          decimal(0, 60, 2),
          blankOr(decimal(0, 9, 2)),
          blankOr(fc.integer({ min: 100, max: 104 }).map((day) => FIRST_DAY + day)),
        ),
        { minLength: 1, maxLength: 4 },
      ),
    ),
  )
  .map((lotsOf) =>
    lotsOf.flatMap((rows, at) =>
      // Lot ids of one material sort by number: "4 lot 2", "4 lot 02" and "4 lot 10" are three lots.
      rows.map((row, number) => [
        `${at} lot ${['2', '02', '10', '1'][number] ?? ''}`,
        materialNames[at] ?? '',
        ...row,
      ]),
    ),
  );

/** Recipes: each of base and colourant in grams, drops or parts, or blended of colours before it. */
const colours: fc.Arbitrary<Cell[][]> = fc
  .tuple(
    ...colourNames.map((_, at) =>
      fc.record({
        blend: at < 2 ? fc.constant(false) : fc.boolean(),
        parts: fc.boolean(),
        ingredients: fc.shuffledSubarray(colourNames.slice(0, at), {
          minLength: Math.min(1, at),
          maxLength: Math.min(2, at),
        }),
        base: fc.constantFrom(...bases),
        colourant: fc.constantFrom(...colourants),
        drops: fc.boolean(),
        amounts: fc.tuple(decimal(0.5, 100, 2), decimal(0.1, 20, 2), decimal(0.5, 100, 2)),
      }),
    ),
  )
  .map((recipes) =>
    recipes.flatMap(
      ({ blend, parts, ingredients, base, colourant, drops, amounts }, at): Cell[][] => {
        const name = colourNames[at] ?? '';
        const measure = parts ? 'parts' : 'g';
        if (blend) {
          const mixed = ingredients.map((other, i): Cell[] => [
            name,
            other,
            amounts[i === 0 ? 0 : 2],
            measure,
          ]);
          return [...mixed, [name, base, amounts[1], measure]];
        }
        return [
          [name, base, amounts[0], measure],
          [name, colourant, amounts[1], !parts && drops ? 'drops' : measure],
        ];
      },
    ),
  );

const molds: fc.Arbitrary<Cell[][]> = fc.tuple(
  moldRow('Tiles', 'tiles', [4, 36]),
  moldRow('Round tiles', 'tiles', [7, 13]),
  moldRow('Heron', 'embeds', [1, 6]),
  moldRow('Bar mold', 'bars', [3, 8]),
);

function moldRow(name: string, makes: string, cavities: readonly number[]): fc.Arbitrary<Cell[]> {
  return fc.tuple(
    fc.constant(name),
    fc.constant(makes),
    fc.constantFrom(...cavities),
    decimal(5, 40, 1),
    blankOr(decimal(0, 6, 1)),
    blankOr(decimal(0, 40, 2)),
    fc.integer({ min: 1, max: 300 }),
  );
}

const soaps = [...colourNames, ...bases];
const layer: fc.Arbitrary<Cell[]> = fc.oneof(
  fc.tuple(
    fc.constant('tiles'),
    fc.constantFrom(...soaps),
    fc.constantFrom('Tiles', 'Round tiles'),
    fc.integer({ min: 1, max: 20 }),
    fc.constant('each'),
  ),
  fc.tuple(
    fc.constant('embed'),
    fc.constantFrom(...soaps),
    fc.constant('Heron'),
    fc.integer({ min: 1, max: 3 }),
    fc.constant('each'),
  ),
  fc.tuple(
    fc.constant('pour'),
    fc.constantFrom(...soaps),
    fc.constant(''),
    decimal(0.5, 60, 1),
    fc.constantFrom('g', 'ml'),
  ),
  fc.tuple(
    fc.constant('scent'),
    fc.constant(others.scent),
    fc.constant(''),
    decimal(0.1, 3, 1),
    fc.constantFrom('g', 'ml', 'drops'),
  ),
  fc.tuple(
    fc.constant('paint'),
    fc.constant(others.paint),
    fc.constant(''),
    decimal(0.1, 3, 1),
    fc.constantFrom('g', 'drops'),
  ),
  fc.tuple(
    fc.constant('pack'),
    fc.constant(others.pack),
    fc.constant(''),
    fc.constant(1),
    fc.constant('each'),
  ),
);

export const designNames = ['Lantern', 'Heron Quay'];

const layers: fc.Arbitrary<Cell[][]> = fc
  .tuple(
    ...designNames.map(() =>
      // A layer that stands twice alike is refused.
      fc.uniqueArray(fc.tuple(fc.integer({ min: 1, max: 12 }), layer), {
        minLength: 1,
        maxLength: 6,
        selector: (row) => JSON.stringify(row),
      }),
    ),
  )
  .map((of) =>
    of.flatMap((rows, at) =>
      rows.map(([number, row]): Cell[] => [designNames[at] ?? '', number, ...row]),
    ),
  );

const designs: fc.Arbitrary<Cell[][]> = fc.tuple(
  ...designNames.map((name) =>
    fc.tuple(
      fc.constant(name),
      fc.constantFrom('', 'Bar mold'),
      decimal(0, 15, 1),
      decimal(0, 40, 0),
      fc.constantFrom<Cell>('', 100, 90, 33.3, 50),
      blankOr(decimal(0, 72, 0)),
    ),
  ),
);

const settings: fc.Arbitrary<Cell[][]> = fc
  .record({
    Currency: fc.constantFrom('USD', 'JPY', 'KWD'),
    Valuation: fc.constantFrom('FIFO', 'Average'),
    'Scale step g': fc.constantFrom<Cell>(0, 0.1, 1, 5),
    'Labour rate per hour': decimal(0, 40, 2),
    'Overhead per bar': decimal(0, 2, 2),
    'History days': fc.integer({ min: 2, max: 400 }),
  })
  .map((values) => Object.entries(values));

/** Tables without a history: every name known, every figure within its limits. */
export const newWorkshop: fc.Arbitrary<Tables> = fc
  .record({ settings, materials, lots, molds, colours, designs, layers })
  .map((rows) => ({
    Settings: table('Setting | Value', ...rows.settings),
    Materials: table(
      'Material | Kind | Unit | Density g/ml | Drops per ml | Pack size | Pack price | Lead days | Lead days SD | Service %',
      ...rows.materials,
    ),
    Lots: table(
      'Lot | Material | Received | Quantity | Paid | Freight | Best before',
      ...rows.lots,
    ),
    LedgerLines: table(
      'Entry | When | Reason | Material | Quantity | Lot | Value | Batch | By | Note',
    ),
    Molds: table('Mold | Makes | Cavities | Fill g | Scrape g | Price | Life fills', ...rows.molds),
    Colours: table('Colour | Ingredient | Amount | Measure', ...rows.colours),
    Designs: table(
      'Design | Bar mold | Labour minutes | Setup minutes | Yield % | Hands-off hours',
      ...rows.designs,
    ),
    Layers: table('Design | Layer | Part | Item | Mold | Per bar | Per', ...rows.layers),
    Batches: table(
      'Batch | Poured | Design | Bars | Good | Seconds | Lost | Minutes | Material cost | Cost per bar | Ready on | State | By | Note',
    ),
  }));

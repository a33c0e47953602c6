import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findUnit, stockUnits } from '../../src/domain/measure/units.ts';
import type { Cell } from '../../src/workbook/port.ts';
import { ranges, table, type Tables, workshop } from '../support/small-book.ts';
import { errorOf, loadFunctions } from '../support/worksheet-functions.ts';

const call = await loadFunctions();
const TODAY = '2024-03-01';

/** A base bought in pounds, oil in fluid ounces, glycerin in litres, mica in ounces: invented prices. */
const shop: Tables = {
  Settings: table('Setting | Value', ['Scale step g', 0]),
  Materials: table(
    'Material | Kind | Unit | Density g/ml | Drops per ml | Pack size | Pack price',
    ['Base', 'base', 'lb', '', '', 10, 30],
    ['Mica', 'colourant', 'oz', '', '', 1, 4],
    ['Dye', 'colourant', 'fl oz', 1.2, 25, 1, 6],
    ['Oil', 'fragrance', 'kg', 0.9, '', 1, 50],
    ['Glycerin', 'extra', 'l', 1.25, '', 1, 12],
  ),
  Lots: table(
    'Lot | Material | Received | Quantity | Paid',
    ['L1', 'Base', '2024-01-05', 2, 6],
    ['L2', 'Mica', '2024-01-05', 1, 4],
    ['L3', 'Dye', '2024-01-05', 1, 6],
    ['L4', 'Oil', '2024-01-05', 1, 50],
    ['L5', 'Glycerin', '2024-01-05', 1, 12],
  ),
  Colours: table(
    'Colour | Ingredient | Amount | Measure',
    ['Sea', 'Dye', 25, 'drops'],
    ['Sea', 'Base', 98.8, 'g'],
    ['Sand', 'Base', 96, 'parts'],
    ['Sand', 'Mica', 4, 'parts'],
  ),
  Designs: table('Design', ['Pound'], ['Drops'], ['Pinch'], ['Painted']),
  Layers: table(
    'Design | Layer | Part | Item | Per bar | Per',
    ['Pound', '1', 'pour', 'Base', 453.59237, 'g'],
    ['Drops', '1', 'pour', 'Sea', 100, 'g'],
    ['Pinch', '1', 'pour', 'Sand', 100, 'g'],
    ['Painted', '1', 'pour', 'Base', 100, 'g'],
    ['Painted', '2', 'scent', 'Oil', 10, 'ml'],
    ['Painted', '3', 'paint', 'Glycerin', 2.5, 'g'],
  ),
};
const book = (tables: Tables = shop): unknown => call('BOOK', ...ranges(tables));

/** Pounds, ounces and fluid ounces: REFERENCES U1, U2, U7. */
it.each([
  // Two pounds hold two bars of a pound, to the last digit and not a hair more.
  ['Pound', 2, [['Base', 2, 'lb', 2, 0]]],
  ['Pound', 3, [['Base', 3, 'lb', 2, 1]]],
  // 25 drops are 1 ml, 1.2 g, in 100 g: 1/29.5735295625 fl oz; the rest of it base.
  [
    'Drops',
    1,
    [
      ['Base', 98.8 / 453.59237, 'lb', 2, 0],
      ['Dye', 1 / 29.5735295625, 'fl oz', 1, 0],
    ],
  ],
  [
    'Pinch',
    1,
    [
      ['Base', 96 / 453.59237, 'lb', 2, 0],
      ['Mica', 4 / 28.349523125, 'oz', 1, 0],
    ],
  ],
  // 10 ml of 0.9 g; 2.5 g at 1.25 g/ml are 2 ml.
  [
    'Painted',
    1,
    [
      ['Base', 100 / 453.59237, 'lb', 2, 0],
      ['Oil', 0.009, 'kg', 1, 0],
      ['Glycerin', 0.002, 'l', 1, 0],
    ],
  ],
] as const)('%s × %d takes from stock in the units it is bought in', (design, bars, rows) => {
  const [, ...found] = call('MATERIALS', design, bars, book()) as Cell[][];
  expect(found).toEqual(rows.map((row) => row.map((cell) => close(cell))));
});

const close = (cell: Cell): unknown => (typeof cell === 'number' ? expect.closeTo(cell, 11) : cell);

it('weighs in grams and drops what is kept in pounds and fluid ounces', () => {
  const [, ...rows] = call('WEIGHOUT', 'Drops', 1, book()) as Cell[][];
  expect(rows.map((row) => row.slice(5, 8))).toEqual([
    ['Base', 98.8, 'g'],
    ['Dye', 25, 'drops'],
  ]);
});

it('counts what can be made, costs and values by the unit', () => {
  expect(call('CANMAKE', 'Pound', book())).toBe(2);
  expect(call('UNITCOST', 'Base', book(), TODAY)).toBe(3);
  expect(call('STOCKVALUE', 'Base', book(), TODAY)).toBe(6);
  // A pound of base at 3 a pound, and nothing else.
  expect(call('COSTPERBAR', 'Pound', book(), 1, TODAY)).toBe(3);
  // 98.8 g of base at 3 a pound, 1 ml of dye at 6 a fluid ounce.
  expect(call('COSTPERBAR', 'Drops', book(), 1, TODAY)).toBeCloseTo(
    (98.8 * 3) / 453.59237 + 6 / 29.5735295625,
    9,
  );
  expect(call('AMOUNT', 1, 'lb', 'ml', 'Oil', book())).toBeCloseTo(453.59237 / 0.9, 9);
});

it.each([
  ['stone', '"stone"'],
  ['lbs', 'Did you mean "lb"?'],
])('refuses the unit %s and names all that there are', (unit, says) => {
  const { message } = errorOf(() =>
    book({ ...shop, Materials: table('Material | Kind | Unit', ['Base', 'base', unit]) }),
  );
  expect(message).toContain(says);
  expect(message).toContain('g, kg, oz, lb, ml, l, fl oz, each');
});

it('takes the density of a volume for 1 where it is blank, and says so; never of a weight', () => {
  const layers = (unit: string): Tables => ({
    ...shop,
    Materials: table('Material | Kind | Unit', ['Base', 'base', unit]),
    Lots: table('Lot | Material | Received | Quantity | Paid', ['L1', 'Base', TODAY, 1, 1]),
    Colours: table('Colour | Ingredient | Amount | Measure', ['Clear', 'Base', 10, 'ml']),
    Designs: table('Design', ['Bar']),
    Layers: table('Design | Layer | Part | Item | Per bar | Per', [
      'Bar',
      '1',
      'pour',
      'Clear',
      250,
      'g',
    ]),
  });
  expect(call('MATERIALS', 'Bar', 1, book(layers('l')))).toEqual([
    ['Material', 'Amount', 'Unit', 'On hand', 'Short'],
    ['Base', 0.25, 'l', 1, 0],
  ]);
  expect(errorOf(() => book(layers('kg'))).message).toContain('Density g/ml');
});

describe('law', () => {
  const sizeOf = (unit: string): number => findUnit(unit)?.size.toNumber() ?? 1;
  const header = (name: string): number => workshop['Materials']?.[0]?.indexOf(name) ?? -1;

  /** The same workshop, with each material kept in another unit of its kind. */
  function keptIn(units: readonly string[]): Tables {
    const [headers = [], ...materials] = workshop['Materials'] ?? [];
    const sizes = new Map<Cell, number>();
    const kept = materials.map((cells, at) => {
      const own = cells[header('Unit')];
      const unit = units[at] ?? '';
      const fits = findUnit(unit)?.dimension === findUnit(String(own))?.dimension ? unit : own;
      const size = sizeOf(String(fits));
      sizes.set(cells[0] ?? '', size);
      return cells
        .with(header('Unit'), fits ?? '')
        .with(header('Pack size'), Number(cells[header('Pack size')]) / size);
    });
    const [lotHeaders = [], ...lots] = workshop['Lots'] ?? [];
    return {
      ...workshop,
      Materials: [headers, ...kept],
      Lots: [
        lotHeaders,
        ...lots.map((cells) => cells.with(3, Number(cells[3]) / (sizes.get(cells[1] ?? '') ?? 1))),
      ],
    };
  }
  const inUnits = fc.array(fc.constantFrom(...stockUnits), { minLength: 8, maxLength: 8 });
  const near = (of: unknown): unknown =>
    (of as Cell[][]).map((row) =>
      row.map((cell) => (typeof cell === 'number' ? expect.closeTo(cell, 7) : cell)),
    );

  it('whatever units a workshop buys in, it weighs, costs and labels the same', () => {
    const plain = book(workshop);
    const melts = near(call('MELTSHEET', 'Tide Pool', 7, plain));
    const costs = near(call('COSTLINES', 'Tide Pool', plain, 7, TODAY));
    const checks = near(call('CHECKS', 'Tide Pool', plain));
    const most = call('CANMAKE', 'Tide Pool', plain);
    fc.assert(
      fc.property(inUnits, (units) => {
        const other = book(keptIn(units));
        expect(call('MELTSHEET', 'Tide Pool', 7, other)).toEqual(melts);
        expect(call('COSTLINES', 'Tide Pool', other, 7, TODAY)).toEqual(costs);
        expect(call('CHECKS', 'Tide Pool', other)).toEqual(checks);
        expect(call('CANMAKE', 'Tide Pool', other)).toBe(most);
      }),
      { numRuns: 25 },
    );
  });
});

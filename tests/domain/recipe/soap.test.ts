import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Soap } from '../../../src/domain/book/book.ts';
import { findSoap } from '../../../src/domain/book/find.ts';
import { type Exact, exact, one, sum, toCell } from '../../../src/domain/kernel/exact.ts';
import { soapDensity } from '../../../src/domain/recipe/density.ts';
import { baseShare } from '../../../src/domain/recipe/melt.ts';
import { materialsIn } from '../../../src/domain/recipe/materials-in.ts';
import { materialsPerG } from '../../../src/domain/recipe/materials-per-g.ts';
import { weighByHand, weighExactly } from '../../../src/domain/recipe/weigh-out.ts';
import { newWorkshop } from '../../support/arbitrary-book.ts';
import { readTables, sure } from '../../support/ledger-of.ts';
import { table, withRows, workshop } from '../../support/small-book.ts';

const book = readTables(workshop);
const soapOf = (name: string, from = book): Soap => sure(findSoap(from, name));

describe('what a soap consists of', () => {
  it.each([
    ['Clear base', { 'Clear base': 1 }],
    ['Foam', { 'White base': 1 }],
    ['Slate', { 'Clear base': 0.97, 'Blue mica': 0.03 }],
    // 20 drops at 25 to the ml are 0.8 ml in 100 g of soap; stock is in ml.
    ['Teal', { 'Clear base': 0.9904, 'Green drops': 0.008 }],
    // 15 of 25 g are Slate, 10 are Foam.
    ['Mist', { 'Clear base': 0.582, 'Blue mica': 0.018, 'White base': 0.4 }],
  ])('%s, in stock units for each gram', (name, wanted) => {
    const perG = [...materialsPerG(soapOf(name))].map(([{ name: material }, quantity]) => [
      material,
      toCell(quantity),
    ]);
    expect(Object.fromEntries(perG)).toEqual(wanted);
    expect([...materialsIn(soapOf(name))].map((material) => material.name).sort()).toEqual(
      Object.keys(wanted).sort(),
    );
  });

  it.each([
    ['Clear base', 1],
    ['Slate', 0.97],
    ['Teal', 0.9904],
    ['Mist', 0.6 * 0.97 + 0.4],
  ])('%s: the share of it that is base', (name, share) => {
    expect(toCell(baseShare(soapOf(name)))).toBeCloseTo(share, 14);
  });
});

describe('the density of a soap', () => {
  const measured = readTables({
    ...workshop,
    Colours: table(
      'Colour | Ingredient | Amount | Measure',
      ['Half and half', 'Clear base', 105, 'g'],
      ['Half and half', 'Glycerin', 125, 'g'],
      ['In it', 'Half and half', 115, 'g'],
      ['In it', 'Clear base', 105, 'g'],
      ['By drops', 'Clear base', 105, 'g'],
      ['By drops', 'Green drops', 250, 'drops'],
      ['Dusty', 'Clear base', 105, 'g'],
      ['Dusty', 'Blue mica', 1, 'g'],
    ),
    Layers: table('Design | Layer | Part | Item | Mold | Per bar | Per', [
      'Plain Bar',
      '1',
      'pour',
      'Clear base',
      '',
      50,
      'g',
    ]),
    Designs: table('Design', ['Plain Bar']),
    Plan: table('Plan line | Design | Bars | Ready by | Fair'),
  });

  it.each([
    ['Clear base', 1.05],
    // 105 g are 100 ml, 125 g another 100 ml.
    ['Half and half', 1.15],
    // 115 g of it are 100 ml.
    ['In it', 1.1],
    // 250 drops at 25 to the ml are 10 ml of 1.2 g/ml.
    ['By drops', 117 / 110],
  ])('%s: its grams over its millilitres', (name, density) => {
    expect(toCell(sure(soapDensity(soapOf(name, measured))))).toBeCloseTo(density, 14);
  });

  it('is asked for where one ingredient has none, by name', () => {
    const result = soapDensity(soapOf('Dusty', measured));
    expect(result.ok ? '' : result.failure.sentence).toBe(
      'Fill in Density g/ml for Blue mica in Materials: Dusty is measured in ml.',
    );
  });
});

describe('a melt weighed out', () => {
  const shown = (weighed: ReturnType<typeof weighExactly>) =>
    weighed.map(({ amount, measure, g, quantity }) => [
      toCell(amount),
      measure,
      toCell(g),
      toCell(quantity),
    ]);

  it.each([
    [
      'Slate',
      40,
      [
        [38.8, 'g', 38.8, 38.8],
        [1.2, 'g', 1.2, 1.2],
      ],
    ],
    [
      'Teal',
      50,
      [
        [49.52, 'g', 49.52, 49.52],
        [10, 'drops', 0.48, 0.4],
      ],
    ],
    // Parts are weighed in grams.
    ['Foam', 30, [[30, 'g', 30, 30]]],
    ['Foam', 0, []],
  ] as const)('%s, %d g just as the recipe says', (name, grams, wanted) => {
    expect(shown(weighExactly(soapOf(name), exact(grams)))).toEqual(wanted);
  });

  it.each([
    // 1.2 g of mica is below ten steps: to a tenth; the base takes up the rest.
    [
      'Slate',
      40,
      1,
      [
        [39, 'g', 39, 39],
        [1.2, 'g', 1.2, 1.2],
      ],
    ],
    // 8.6 drops are 9 of 0.048 g; 42.568 g of base in whole grams.
    [
      'Teal',
      43,
      1,
      [
        [43, 'g', 43, 43],
        [9, 'drops', 0.432, 0.36],
      ],
    ],
    // From ten steps on, in whole ones.
    ['Foam', 52.3, 5, [[55, 'g', 55, 55]]],
    ['Foam', 30.7, 5, [[31, 'g', 31, 31]]],
  ] as const)('%s, %d g with a scale of %d g', (name, grams, step, wanted) => {
    expect(shown(weighByHand(soapOf(name), exact(grams), exact(step)))).toEqual(wanted);
  });
});

describe('laws', () => {
  const soaps = newWorkshop.map((tables) => {
    const { colours: all } = readTables(tables);
    return [...all.values()];
  });
  const grams = fc.integer({ min: 1, max: 100_000 }).map((tenths) => exact(tenths / 10));
  const gramsOf = (weighed: ReturnType<typeof weighExactly>): Exact =>
    sum(weighed.map(({ g }) => g));

  it('just as the recipe says comes to the melt, and each line keeps its share', () => {
    fc.assert(
      fc.property(soaps, grams, (all, wanted) => {
        expect(all.length).toBeGreaterThan(0);
        for (const soap of all) {
          const weighed = weighExactly(soap, wanted);
          expect(gramsOf(weighed).minus(wanted).abs().lt('1e-20'), soap.name).toBe(true);
          for (const { line, g } of weighed)
            expect(line.g.times(wanted).minus(g.times(soap.recipeG)).abs().lt('1e-20')).toBe(true);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('by hand never comes to less', () => {
    fc.assert(
      fc.property(soaps, grams, fc.constantFrom(0, 0.1, 1, 5), (all, wanted, step) => {
        for (const soap of all) {
          const weighed = weighByHand(soap, wanted, exact(step));
          expect(gramsOf(weighed).gte(wanted.minus('1e-10')), soap.name).toBe(true);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('the materials in a gram of a soap weighed only in grams are a gram', () => {
    const onlyG = readTables(
      withRows(workshop, 'Colours', ['Deep', 'Mist', 3, 'parts'], ['Deep', 'Slate', 4, 'parts']),
    );
    for (const name of ['Slate', 'Foam', 'Mist', 'Deep'])
      expect(
        sum(materialsPerG(soapOf(name, onlyG)).values())
          .minus(one)
          .abs()
          .lt('1e-30'),
        name,
      ).toBe(true);
  });
});

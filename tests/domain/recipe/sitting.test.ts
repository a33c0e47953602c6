import { asStock } from '../../../src/domain/kernel/measured.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Book, Design } from '../../../src/domain/book/book.ts';
import { Exact, sum, toCell, zero } from '../../../src/domain/kernel/exact.ts';
import { materialNeeds } from '../../../src/domain/recipe/material-needs.ts';
import { noLeftovers } from '../../../src/domain/recipe/melt.ts';
import {
  planByHand,
  planMelts,
  planSitting,
  planSittingByHand,
  type Sitting,
} from '../../../src/domain/recipe/melt-plan.ts';
import { designNames, newWorkshop } from '../../support/arbitrary-book.ts';
import { readTables, sure } from '../../support/ledger-of.ts';
import { table } from '../../support/small-book.ts';

/** Two bars of one colour, and one of it blended: 18 tiles a bar each, from a section of 36 that takes 50 g. */
const workshop = readTables({
  Settings: table('Setting | Value', ['Scale step g', 10]),
  Materials: table(
    'Material | Kind | Unit',
    ['Base', 'base', 'g'],
    ['Blue', 'colourant', 'g'],
    ['Box', 'packaging', 'each'],
  ),
  Molds: table('Mold | Makes | Cavities | Fill g | Scrape g', ['Tray', 'tiles', 36, 48, 2]),
  Colours: table(
    'Colour | Ingredient | Amount | Measure',
    ['Teal', 'Base', 90, 'g'],
    ['Teal', 'Blue', 10, 'g'],
    ['Mist', 'Teal', 1, 'parts'],
    ['Mist', 'Base', 4, 'parts'],
  ),
  Designs: table('Design | Yield %', ['Cove', ''], ['Reef', ''], ['Haze', ''], ['Frail', 50]),
  Layers: table(
    'Design | Layer | Part | Item | Mold | Per bar | Per',
    ['Cove', '1', 'tiles', 'Teal', 'Tray', 18, 'each'],
    ['Cove', '2', 'pack', 'Box', '', 1, 'each'],
    ['Reef', '1', 'tiles', 'Teal', 'Tray', 18, 'each'],
    ['Reef', '2', 'pack', 'Box', '', 2, 'each'],
    ['Haze', '1', 'pour', 'Mist', '', 22, 'g'],
    ['Frail', '1', 'pour', 'Base', '', 10, 'g'],
  ),
});

const designOf = (book: Book, name: string): Design => {
  const design = book.designs.get(name.toLowerCase());
  if (design === undefined) throw new Error(name);
  return design;
};

type Wanted = readonly (readonly [name: string, bars: number])[];
const wantedOf = (book: Book, wanted: Wanted) =>
  wanted.map(([name, bars]) => ({ design: designOf(book, name), bars }));
const sittingOf = (...wanted: Wanted): Sitting =>
  sure(planSitting(wantedOf(workshop, wanted), workshop.settings, noLeftovers));

const needsOf = (sitting: Sitting) =>
  materialNeeds(sitting).map(({ material, quantity }) => [material.name, toCell(quantity)]);

describe('designs made in one sitting', () => {
  it('share the fills of a colour: 18 tiles and 18 are one section of 36', () => {
    const { melts } = sittingOf(['Cove', 1], ['Reef', 1]);
    expect(melts.map(({ soap, meltG }) => [soap.name, toCell(meltG)])).toEqual([['Teal', 50]]);
    expect(
      melts[0]?.shapes.map(({ fills, sparePieces }) => [fills, sparePieces].map(toCell)),
    ).toEqual([[1, 0]]);
    expect(needsOf(sittingOf(['Cove', 1], ['Reef', 1]))).toEqual([
      ['Base', 45],
      ['Blue', 5],
      ['Box', 3],
    ]);
    // Each alone fills a section of its own, half of it spare.
    expect(needsOf(sittingOf(['Cove', 1]))).toEqual([
      ['Base', 45],
      ['Blue', 5],
      ['Box', 1],
    ]);
  });

  it('melt a colour once for one design’s tiles and another’s blend', () => {
    // 22 g of Mist are 30 g melted, 6 of them Teal; with a section of 50 g that is 56 g, 60 melted.
    const { melts } = sittingOf(['Haze', 1], ['Cove', 1]);
    expect(
      melts.map(({ soap, neededG, meltG }) => [soap.name, ...[neededG, meltG].map(toCell)]),
    ).toEqual([
      ['Teal', 56, 60],
      ['Mist', 22, 30],
    ]);
  });

  it('are one batch where a design stands twice: bars to start are rounded up once', () => {
    const bars = ({ batches }: Sitting) =>
      batches.map(({ design, bars: good, barsToStart }) => [
        design.name,
        good,
        toCell(barsToStart),
      ]);
    expect(bars(sittingOf(['Frail', 1], ['Cove', 2], ['Frail', 2]))).toEqual([
      ['Frail', 3, 6],
      ['Cove', 2, 2],
    ]);
    const thirds = { ...designOf(workshop, 'Frail'), yieldShare: new Exact(2).div(3) };
    const twice = planSitting(
      [
        { design: thirds, bars: 1 },
        { design: thirds, bars: 1 },
      ],
      workshop.settings,
      noLeftovers,
    );
    expect(bars(sure(twice))).toEqual([['Frail', 2, 3]]);
  });

  it('fail as one of them alone would', () => {
    const refusalOf = (...wanted: Wanted): string => {
      const result = planSitting(wantedOf(workshop, wanted), workshop.settings, noLeftovers);
      return result.ok ? '' : result.failure.sentence;
    };
    expect(refusalOf(['Cove', 1], ['Reef', 1.5])).toBe(
      'Bars of Reef is 1.5. Give a whole number, 1 or more.',
    );
    expect(refusalOf(['Cove', 0], ['Reef', 1])).toBe(
      'Bars of Cove is 0. Give a whole number, 1 or more.',
    );
  });
});

/** Melts are rounded to a picogram before their scale step, each its own way. */
const PICOGRAMS = new Exact('1e-11');

describe('laws', () => {
  const bars = fc.integer({ min: 1, max: 40 });
  const wishes = fc.array(fc.tuple(fc.constantFrom(...designNames), bars), {
    minLength: 1,
    maxLength: 4,
  });

  it('one design in a sitting is that design alone', () => {
    fc.assert(
      fc.property(newWorkshop, fc.constantFrom(...designNames), bars, (tables, name, count) => {
        const book = readTables(tables);
        const design = designOf(book, name);
        const asked = [[{ design, bars: count }], book.settings, noLeftovers] as const;
        const rest = [design, count, book.settings, noLeftovers] as const;
        expect(sure(planMelts(...rest))).toMatchObject(sure(planSitting(...asked)));
        expect(sure(planByHand(...rest))).toMatchObject(sure(planSittingByHand(...asked)));
      }),
    );
  });

  it('a sitting fills and melts no more than its designs apart, in whatever order they are named', () => {
    fc.assert(
      fc.property(newWorkshop, wishes, (tables, wanted) => {
        const book = readTables(tables);
        const batches = wantedOf(book, wanted);
        const plan = (some: typeof batches) => sure(planSitting(some, book.settings, noLeftovers));
        const together = plan(batches);
        const apart = batches.map((batch) => plan([batch]));
        for (const { soap, shapes, meltG } of together.melts) {
          const theirs = apart.flatMap(({ melts }) =>
            melts.filter((melt) => melt.soap.name === soap.name),
          );
          const more = meltG.minus(sum(theirs.map((melt) => melt.meltG)));
          expect(more.lt(PICOGRAMS), `${more} g of ${soap.name} more`).toBe(true);
          for (const { mold, fills } of shapes) {
            const filled = theirs
              .flatMap((melt) => melt.shapes)
              .filter((shape) => shape.mold === mold);
            expect(fills.lte(sum(filled.map((shape) => shape.fills)))).toBe(true);
          }
        }
        const needs = (sitting: Sitting) =>
          new Map(materialNeeds(sitting).map(({ material, quantity }) => [material, quantity]));
        const turned = needs(plan([...batches].reverse()));
        for (const [material, quantity] of needs(together)) {
          const near = quantity.minus(turned.get(material) ?? asStock(zero)).abs();
          expect(near.lt('1e-20'), material.name).toBe(true);
        }
      }),
    );
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { itemOfMaterial } from '../../src/domain/book/find.ts';
import { Exact, sum, zero } from '../../src/domain/kernel/exact.ts';
import { canMake } from '../../src/domain/recipe/can-make.ts';
import { leftoversOnHand } from '../../src/domain/recipe/leftovers-on-hand.ts';
import { materialNeeds } from '../../src/domain/recipe/material-needs.ts';
import { meltsFor, planMelts } from '../../src/domain/recipe/melt-plan.ts';
import { noLeftovers } from '../../src/domain/recipe/melt.ts';
import { onHand } from '../../src/domain/stock/on-hand.ts';
import { designNames, LAST_DAY, newWorkshop } from '../support/arbitrary-book.ts';
import { workedWorkshop } from '../support/arbitrary-pours.ts';
import { readTables, sure } from '../support/ledger-of.ts';

const designName = fc.constantFrom(...designNames).map((name) => name.toLowerCase());
const bars = fc.integer({ min: 1, max: 60 });

/** A picogram. Thirds have no last decimal, so what goes through a recipe is compared to this. */
const PICOGRAM = new Exact('1e-12');
const near = (a: Exact, b: Exact): boolean => a.minus(b).abs().lte(PICOGRAM);

describe('a melt plan', () => {
  it('melts what goes into bars, spares, blends and leftovers, no more and no less', () => {
    fc.assert(
      fc.property(workedWorkshop, designName, bars, fc.boolean(), (tables, name, count, use) => {
        const book = readTables(tables);
        const design = book.designs.get(name);
        if (design === undefined) throw new Error(name);
        const plan = sure(
          planMelts(design, count, book.settings, leftoversOnHand(book, LAST_DAY, use)),
        );
        for (const melt of plan.melts) {
          const shapedG = sum(melt.shapes.map(({ mold, fills }) => mold.fillG.times(fills)));
          const out = sum([shapedG, melt.pouredG, melt.blendedG, melt.leftoverG]);
          expect(near(out, melt.meltG), `${melt.soap.name}: ${out} of ${melt.meltG}`).toBe(true);
          // What is rounded up is below one scale step, and never short.
          const spareG = melt.meltG.minus(melt.neededG);
          expect(spareG.isNegative()).toBe(false);
          const { scaleStepG } = book.settings;
          expect(scaleStepG.isZero() ? spareG.isZero() : spareG.lt(scaleStepG)).toBe(true);
          for (const { mold, fills, piecesNeeded, piecesFromSpares, sparePieces } of melt.shapes) {
            expect(piecesFromSpares.lte(piecesNeeded)).toBe(true);
            expect(fills.gte(0)).toBe(true);
            const laid = piecesNeeded.minus(piecesFromSpares);
            expect(fills.times(mold.cavities).toString()).toBe(laid.plus(sparePieces).toString());
            expect(sparePieces.lt(mold.cavities)).toBe(true);
          }
          const weighed = melt.remeltG.plus(sum(melt.ingredients.map(({ g }) => g)));
          expect(near(weighed, melt.meltG)).toBe(true);
          const takenByBlends = sum(
            plan.melts.flatMap(({ ingredients }) =>
              ingredients.flatMap(({ line: { ingredient }, g }) =>
                ingredient.kind === 'soap' && ingredient.soap.name === melt.soap.name ? [g] : [],
              ),
            ),
          );
          expect(near(takenByBlends, melt.blendedG)).toBe(true);
        }
      }),
      { numRuns: 250 },
    );
  });

  it('melts a colour before every blend made of it, and once', () => {
    fc.assert(
      fc.property(newWorkshop, designName, bars, (tables, name, count) => {
        const book = readTables(tables);
        const design = book.designs.get(name);
        if (design === undefined) throw new Error(name);
        const { melts } = sure(planMelts(design, count, book.settings, noLeftovers));
        const melted = new Set<string>();
        for (const { soap } of melts) {
          expect(melted.has(soap.name)).toBe(false);
          for (const { ingredient } of soap.lines) {
            if (ingredient.kind === 'soap') expect(melted.has(ingredient.soap.name)).toBe(true);
          }
          melted.add(soap.name);
        }
      }),
    );
  });

  it('never needs less of a material for more bars', () => {
    fc.assert(
      fc.property(newWorkshop, designName, bars, (tables, name, count) => {
        const book = readTables(tables);
        const design = book.designs.get(name);
        if (design === undefined) throw new Error(name);
        const need = (number: number): Map<string, Exact> =>
          new Map(
            materialNeeds(sure(planMelts(design, number, book.settings, noLeftovers))).map(
              ({ material, quantity }) => [material.name, quantity],
            ),
          );
        const more = need(count + 1);
        for (const [material, quantity] of need(count)) {
          expect((more.get(material) ?? zero).gte(quantity), material).toBe(true);
        }
      }),
    );
  });

  it('never melts more of a colour with leftovers at hand than without', () => {
    fc.assert(
      fc.property(workedWorkshop, designName, bars, (tables, name, count) => {
        const book = readTables(tables);
        const design = book.designs.get(name);
        if (design === undefined) throw new Error(name);
        const freshG = (use: boolean): Exact[] =>
          sure(
            planMelts(design, count, book.settings, leftoversOnHand(book, LAST_DAY, use)),
          ).melts.map(({ meltG, remeltG }) => meltG.minus(remeltG));
        const plain = freshG(false);
        freshG(true).forEach((g, at) => expect(g.lte(plain[at] ?? zero)).toBe(true));
      }),
    );
  });
});

describe('the bars that stock allows', () => {
  /** So many that stock is called no limit. */
  const NO_LIMIT = 1e15;

  it('can be made, as can any fewer, and not one more', () => {
    fc.assert(
      fc.property(
        fc.oneof(newWorkshop, workedWorkshop),
        designName,
        fc.nat(),
        (tables, name, at) => {
          const book = readTables(tables);
          const design = book.designs.get(name);
          if (design === undefined) throw new Error(name);
          const allowed = canMake(book, design, LAST_DAY);
          const most = allowed.ok ? allowed.value : NO_LIMIT;
          const enough = (count: number): boolean =>
            materialNeeds(meltsFor(design, count, book.settings, noLeftovers)).every(
              ({ material, quantity }) =>
                quantity.lte(onHand(book, itemOfMaterial(material), LAST_DAY)),
            );
          if (most > 0) expect(enough(most) && enough(1 + (at % most))).toBe(true);
          expect(most === NO_LIMIT || !enough(most + 1)).toBe(true);
          expect(Number.isInteger(most)).toBe(true);
        },
      ),
    );
  });
});

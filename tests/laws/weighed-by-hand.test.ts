import { asGrams } from '../../src/domain/kernel/measured.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Exact, sum, zero } from '../../src/domain/kernel/exact.ts';
import { addedFor } from '../../src/domain/ledger/consumption.ts';
import { postBatch } from '../../src/domain/ledger/post-batch.ts';
import { leftoversOnHand } from '../../src/domain/recipe/leftovers-on-hand.ts';
import { materialNeeds } from '../../src/domain/recipe/material-needs.ts';
import { planByHand } from '../../src/domain/recipe/melt-plan.ts';
import { weighExactly } from '../../src/domain/recipe/weigh-out.ts';
import { amountOf, cardsOf } from '../../taskpane/pour/weigh-cards.ts';
import { designNames, LAST_DAY } from '../support/arbitrary-book.ts';
import { pourOf, pourWish, workedWorkshop } from '../support/arbitrary-pours.ts';
import { itemsOf, readTables, sure } from '../support/ledger-of.ts';

const designName = fc.constantFrom(...designNames).map((name) => name.toLowerCase());
const bars = fc.integer({ min: 1, max: 60 });
const PICOGRAM = new Exact('1e-12');
const FINEST = new Exact('0.001');
const near = (a: Exact, b: Exact): boolean => a.minus(b).abs().lte(PICOGRAM);

/** Whether a hand can measure it: the rule told again, by what is left over beyond whole steps. */
function isOfSteps(amount: Exact, unit: string, scaleStepG: Exact): boolean {
  if (unit === 'drops') return amount.isInteger();
  const step = unit === 'g' && !scaleStepG.isZero() ? scaleStepG : new Exact('0.1');
  const finer = [1, 10, 100, 1000, 10_000].map((parts) => Exact.max(step.div(parts), FINEST));
  return finer.some((size, at) => {
    const isFewEnough = at === 0 || amount.lte((finer[at - 1] ?? size).times(10));
    return isFewEnough && amount.mod(size).isZero();
  });
}

describe('a plan by hand', () => {
  it('weighs whole steps and drops, never less than the melt nor a step more', () => {
    fc.assert(
      fc.property(workedWorkshop, designName, bars, fc.boolean(), (tables, name, count, use) => {
        const book = readTables(tables);
        const design = book.designs.get(name);
        if (design === undefined) throw new Error(name);
        const { scaleStepG } = book.settings;
        const plan = sure(
          planByHand(design, count, book.settings, leftoversOnHand(book, LAST_DAY, use)),
        );
        for (const { soap, meltG, remeltG, ingredients, blendedG } of plan.melts) {
          const exactly = weighExactly(soap, meltG.minus(remeltG));
          const most = ingredients
            .map(({ line }) => line.g)
            .reduce((a, b) => Exact.max(a, b), zero);
          for (const [at, { line, amount, measure }] of ingredients.entries()) {
            expect(isOfSteps(amount, measure, scaleStepG), `${amount} ${measure}`).toBe(true);
            // Only the heaviest takes up what rounding leaves; a drop is the coarsest step of all others.
            const by = amount.minus(exactly[at]?.amount ?? zero).abs();
            const coarsest = measure === 'drops' ? 1 : Exact.max(scaleStepG, '0.1');
            if (!line.g.eq(most)) expect(by.lte(new Exact(coarsest).div(2))).toBe(true);
          }
          const weighed = remeltG.plus(sum(ingredients.map(({ g }) => g)));
          expect(weighed.plus(asGrams(PICOGRAM)).gte(meltG), `${weighed} of ${meltG}`).toBe(true);
          const takenByBlends = sum(
            plan.melts.flatMap((melt) =>
              melt.ingredients.flatMap(({ line: { ingredient }, g }) =>
                ingredient.kind === 'soap' && ingredient.soap.name === soap.name ? [g] : [],
              ),
            ),
          );
          expect(near(takenByBlends, blendedG)).toBe(true);
        }
      }),
      { numRuns: 250 },
    );
  });

  it('is what the cards say and what the ledger takes', () => {
    fc.assert(
      fc.property(workedWorkshop, pourWish, (tables, wish) => {
        const book = readTables(tables);
        const pour = pourOf({ ...wish, day: LAST_DAY }, 'X')(book);
        const names = new Set(itemsOf(book).map(({ name }) => name));
        const posted = postBatch(book, { ...pour, countIsOff: names }, LAST_DAY);
        if (!posted.ok || posted.value.kind !== 'ready') return;
        const { plan } = pour;
        const added = addedFor(plan, pour.lost ?? 0);
        const used = new Map<string, Exact>();
        for (const { reason, item, quantity } of posted.value.posting.moves)
          if (reason === 'used') used.set(item.name, (used.get(item.name) ?? zero).minus(quantity));
        for (const { material, quantity } of materialNeeds({ ...plan, added })) {
          const lines = plan.melts.flatMap(({ ingredients }) => ingredients).length + 1;
          const took = used.get(material.name) ?? zero;
          // Drops of what is kept in ml are written to the microlitre, line by line.
          expect(took.minus(quantity).abs().lte(FINEST.div(2).times(lines))).toBe(true);
        }
        for (const line of cardsOf(plan).flatMap((card) => card.lines)) {
          if (line.unit === 'drops') expect(amountOf(line)).not.toMatch(/^0|\./u);
          else if (!line.amount.isZero())
            expect(amountOf(line)).toBe(
              `${line.amount.toString()}${line.unit === 'each' ? '' : ` ${line.unit}`}`,
            );
        }
      }),
      { numRuns: 250 },
    );
  });
});

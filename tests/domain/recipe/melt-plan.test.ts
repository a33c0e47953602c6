import { describe, expect, it } from 'vitest';
import { exact, toCell, zero } from '../../../src/domain/kernel/exact.ts';
import { materialNeeds } from '../../../src/domain/recipe/material-needs.ts';
import { type MeltPlan, planMelts } from '../../../src/domain/recipe/melt-plan.ts';
import { type Melt, noLeftovers, type OnHandByName } from '../../../src/domain/recipe/melt.ts';
import { pouringOrder } from '../../../src/domain/recipe/pouring-order.ts';
import { readTables, sure } from '../../support/ledger-of.ts';
import { withSetting, workshop } from '../../support/small-book.ts';

/** Worked by hand from contract §3 and the small workshop's round figures. */
const book = readTables(workshop);
const designOf = (name: string) => {
  const design = book.designs.get(name.toLowerCase());
  if (design === undefined) throw new Error(name);
  return design;
};
const plan = (
  name: string,
  bars: number,
  scaleStepG = 1,
  onHand: OnHandByName = noLeftovers,
): MeltPlan => sure(planMelts(designOf(name), bars, { scaleStepG: exact(scaleStepG) }, onHand));

function meltOf(plan: MeltPlan, soap: string): Melt {
  const melt = plan.melts.find((each) => each.soap.name === soap);
  if (melt === undefined) throw new Error(soap);
  return melt;
}

/** Grams needed, melted, remelted and left over. */
const gramsOf = ({ neededG, meltG, remeltG, leftoverG }: Melt): number[] =>
  [neededG, meltG, remeltG, leftoverG].map(toCell);
/** Pieces needed, from spares, fills, and pieces to spare. */
const piecesOf = ({ shapes }: Melt): number[][] =>
  shapes.map(({ piecesNeeded, piecesFromSpares, fills, sparePieces }) =>
    [piecesNeeded, piecesFromSpares, fills, sparePieces].map(toCell),
  );
const weighedOf = ({ ingredients }: Melt) =>
  ingredients.map(({ line: { ingredient }, amount, measure, g, quantity }) => [
    ingredient.kind === 'soap' ? ingredient.soap.name : ingredient.material.name,
    toCell(amount),
    measure,
    toCell(g),
    toCell(quantity),
  ]);
const onHandOf =
  (stock: Readonly<Record<string, number>>): OnHandByName =>
  (name) =>
    exact(stock[name] ?? 0);

describe('a dozen bars of Tide Pool', () => {
  const dozen = plan('Tide Pool', 12);

  it('melt a colour before the blends made from it, else in the order of the layers', () => {
    // In layer 1 Mist comes first by its name, since rows have no order; it takes Slate and Foam.
    const order = ['Slate', 'Foam', 'Mist', 'Teal', 'White base', 'Clear base'];
    expect(dozen.melts.map(({ soap }) => soap.name)).toEqual(order);
    expect(pouringOrder(designOf('Tide Pool').layers).map(({ name }) => name)).toEqual(order);
  });

  it.each([
    // 9 tiles a bar: 108, three sections of 36 and 25 g.
    ['Mist', [75, 75, 0, 0], [[108, 0, 3, 0]]],
    // 18 a bar: six sections, 150 g, and 15 of the 25 g of Mist's recipe: 45 g.
    ['Slate', [195, 195, 0, 0], [[216, 0, 6, 0]]],
    ['Foam', [30, 30, 0, 0], []],
    // 12 lighthouses, 6 to a fill of 30 g.
    ['White base', [60, 60, 0, 0], [[12, 0, 2, 0]]],
    // 17.5 g and 40 g a bar.
    ['Clear base', [690, 690, 0, 0], []],
  ])('%s: grams needed, melted, remelted, left over; pieces', (soap, grams, pieces) => {
    expect(gramsOf(meltOf(dozen, soap))).toEqual(grams);
    expect(piecesOf(meltOf(dozen, soap))).toEqual(pieces);
  });

  it('weigh each line of a recipe at its share', () => {
    expect(weighedOf(meltOf(dozen, 'Slate'))).toEqual([
      ['Clear base', 189.15, 'g', 189.15, 189.15],
      ['Blue mica', 5.85, 'g', 5.85, 5.85],
    ]);
    // 20 drops at 25 to the ml of 1.2 g/ml are 0.96 g of the 100; stock is in ml.
    expect(weighedOf(meltOf(dozen, 'Teal'))).toEqual([
      ['Clear base', 74.28, 'g', 74.28, 74.28],
      ['Green drops', 15, 'drops', 0.72, 0.6],
    ]);
    expect(weighedOf(meltOf(dozen, 'Mist'))).toEqual([
      ['Slate', 45, 'g', 45, 45],
      ['Foam', 30, 'g', 30, 30],
    ]);
  });

  it('take each material once, by kind and name, packaging for every bar', () => {
    const needs = materialNeeds(dozen).map(({ material: { name }, quantity }) => [
      name,
      toCell(quantity),
    ]);
    expect(needs.filter(([name]) => name !== 'Orange oil')).toEqual([
      // 189.15 g in Slate, 74.28 g in Teal, 690 g poured.
      ['Clear base', 953.43],
      ['White base', 90],
      ['Blue mica', 5.85],
      ['Green drops', 0.6],
      ['Alcohol', 12],
      ['Glycerin', 6],
      ['Box', 12],
    ]);
    expect(needs.map(([name]) => name).indexOf('Orange oil')).toBe(4);
  });
});

describe('what is rounded up', () => {
  it('a fill is poured whole, and its other pieces are to spare', () => {
    // One bar: 18 tiles of a section of 36, 9 of one of 36 twice, 1 lighthouse of 6.
    const one = plan('Tide Pool', 1);
    expect(piecesOf(meltOf(one, 'Slate'))).toEqual([[18, 0, 1, 18]]);
    expect(piecesOf(meltOf(one, 'Mist'))).toEqual([[9, 0, 1, 27]]);
    expect(piecesOf(meltOf(one, 'White base'))).toEqual([[1, 0, 1, 5]]);
  });

  it('a melt goes up to the scale step, blends first, and what is over is left over', () => {
    const inTens = plan('Tide Pool', 12, 10);
    // Mist 75 is 80 melted: 48 g of Slate, so Slate needs 198 and is 200.
    expect(gramsOf(meltOf(inTens, 'Mist'))).toEqual([75, 80, 0, 5]);
    expect(gramsOf(meltOf(inTens, 'Slate'))).toEqual([198, 200, 0, 2]);
    expect(gramsOf(meltOf(plan('Tide Pool', 12, 0), 'Slate'))).toEqual([195, 195, 0, 0]);
  });

  it('bars to start so that enough come out good, and scrape is poured, cut off and left over', () => {
    const half = plan('Half Yield', 3);
    expect(toCell(half.barsToStart)).toBe(6);
    expect(gramsOf(meltOf(half, 'Clear base'))).toEqual([300, 300, 0, 0]);
    // 9 tiles a bar: 54, two sections of 25 g and 5 g scrape.
    expect(gramsOf(meltOf(half, 'Slate'))).toEqual([60, 60, 0, 10]);
    expect(piecesOf(meltOf(half, 'Slate'))).toEqual([[54, 0, 2, 18]]);
  });
});

describe('what is on hand', () => {
  it('spare pieces are laid first, and leftover soap is melted first', () => {
    const some = plan('Tide Pool', 12, 1, onHandOf({ 'Slate × Tiles': 100, 'Slate leftover': 40 }));
    // 116 more are four sections: 100 g, and 45 g for Mist.
    expect(piecesOf(meltOf(some, 'Slate'))).toEqual([[216, 100, 4, 28]]);
    expect(gramsOf(meltOf(some, 'Slate'))).toEqual([145, 145, 40, 0]);
    expect(weighedOf(meltOf(some, 'Slate'))[0]?.[1]).toBe(101.85);
  });

  it('never more than is needed is taken', () => {
    const much = plan('Tide Pool', 12, 1, () => exact(10_000));
    expect(piecesOf(meltOf(much, 'Slate'))).toEqual([[216, 216, 0, 0]]);
    // All Mist is there, so no Slate goes into it.
    expect(gramsOf(meltOf(much, 'Slate'))).toEqual([0, 0, 0, 0]);
    expect(gramsOf(meltOf(much, 'Clear base'))).toEqual([690, 690, 690, 0]);
    expect(meltOf(much, 'Clear base').ingredients).toEqual([]);
  });
});

it.each([
  [0, 'Bars is 0. Give a whole number, 1 or more.'],
  [-1, 'Bars is -1. Give a whole number, 1 or more.'],
  [1.5, 'Bars is 1.5. Give a whole number, 1 or more.'],
  [Number.NaN, 'Bars is NaN. Give a whole number, 1 or more.'],
  [1_000_001, 'Bars is 1000001. Give at most 1000000.'],
])('%d bars are refused', (bars, sentence) => {
  expect(planMelts(designOf('Tide Pool'), bars, book.settings, noLeftovers)).toMatchObject({
    ok: false,
    failure: { kind: 'wrong', sentence },
  });
});

it('a million bars are not', () => {
  expect(toCell(plan('Plain Bar', 1_000_000).melts[0]?.meltG ?? zero)).toBe(50_000_000);
});

it('a design without layers is refused, with what to add', () => {
  const bare = { ...designOf('Plain Bar'), layers: [] };
  const result = planMelts(bare, 1, book.settings, noLeftovers);
  expect(result.ok ? '' : result.failure.sentence).toBe(
    'Plain Bar has no lines in Layers. Add what one bar is made of.',
  );
});

it('the workbook’s own scale step is what melts go by', () => {
  const { settings } = readTables(withSetting(workshop, 'Scale step g', 7));
  const { melts } = sure(planMelts(designOf('Plain Bar'), 1, settings, noLeftovers));
  expect(melts.map(({ meltG }) => toCell(meltG))).toEqual([56]);
});

import { asStock } from '../../src/domain/kernel/measured.ts';
import {
  findDesign,
  findMold,
  findSoap,
  itemOfMaterial,
  leftoverName,
} from '../../src/domain/book/find.ts';
import type { Mold } from '../../src/domain/book/book.ts';
import { type Exact, exact, notBelowZero, sum, toCell } from '../../src/domain/kernel/exact.ts';
import { nameKey } from '../../src/domain/kernel/names.ts';
import { answer, andThen, notYet, type Result, wrong } from '../../src/domain/kernel/result.ts';
import type { BenchMeasure } from '../../src/domain/measure/units.ts';
import { moldFill } from '../../src/domain/measure/mold-fill.ts';
import { canMake } from '../../src/domain/recipe/can-make.ts';
import { needsFinerScale, tooLittle } from '../../src/domain/recipe/hand-amount.ts';
import { materialNeeds } from '../../src/domain/recipe/material-needs.ts';
import type { Sitting } from '../../src/domain/recipe/melt-plan.ts';
import { baseShare, type Melt, soapForFills } from '../../src/domain/recipe/melt.ts';
import { countTiles } from '../../src/domain/recipe/tile-count.ts';
import { onHand } from '../../src/domain/stock/on-hand.ts';
import {
  amountCell,
  type AnswersOf,
  type CellAnswer,
  type CellRows,
  cellOrBlank,
} from '../answer.ts';
import { makeRecords } from '../records/make.ts';
import { asWeighed, byRecipe, type Planning, type SittingAsked, sittingOf } from './sitting.ts';

export const makeAnswers: AnswersOf<typeof makeRecords> = {
  MELTSHEET: (batch) =>
    andThen(sittingOf(batch, byRecipe), (plan) =>
      answer(meltsOf(plan).flatMap((melt, index) => meltRows(melt, index + 1))),
    ),

  MATERIALS: (batch) => needRows(batch, byRecipe),

  WEIGHOUT: (batch) =>
    andThen(sittingOf(batch, asWeighed), (plan) =>
      answer(meltsOf(plan).flatMap((melt, index) => handRows(melt, index + 1, plan.scaleStepG))),
    ),

  TAKEOUT: (batch) => needRows(batch, asWeighed),

  CANMAKE: ({ design, book, today }) =>
    andThen(findDesign(book, design), (found) => canMake(book, found, today)),

  /** Grams. */
  BASEPERMOLD: ({ mold, book, fills, colour }) => {
    const grams = andThen(findMold(book, mold), (found) => gramsOf(found, fills));
    if (colour === undefined) return grams;
    return andThen(grams, (g) =>
      andThen(findSoap(book, colour), (soap) => answer(g.times(baseShare(soap)))),
    );
  },

  MOLDFILL: ({ weights, emptyG, densityOfWhatWasWeighed, densityOfSoap }) =>
    andThen(
      moldFill({
        weights: weights.flat(),
        emptyG,
        weighedDensity: exact(densityOfWhatWasWeighed),
        soapDensity: exact(densityOfSoap),
      }),
      ({ fillG, sdG, uncertaintyG, trials }) =>
        answer([[toCell(fillG), cellOrBlank(sdG), cellOrBlank(uncertaintyG), trials]]),
    ),

  TILECOUNT: ({ pattern, colour: wanted }) => {
    const counts = countTiles(pattern);
    if (wanted === undefined) return answer(counts.map(({ colour, tiles }) => [colour, tiles]));
    const found = counts.find(({ colour }) => nameKey(colour) === nameKey(wanted));
    return answer(found?.tiles ?? 0);
  },
};

function gramsOf(mold: Mold, fills: Exact): Result<Exact> {
  if (!fills.isInteger() || fills.lt(0)) {
    return wrong(
      `fills is ${fills.toString()}. A mold is filled whole: give a whole number, 0 or more.`,
    );
  }
  return mold.fillG.isZero()
    ? notYet(`Fill in Fill g for ${mold.name} in Molds: the grams of one full fill.`)
    : answer(soapForFills(mold, fills));
}

const meltsOf = ({ melts }: Sitting): readonly Melt[] =>
  melts.filter((melt) => !melt.meltG.isZero());

function meltRows(melt: Melt, step: number): CellAnswer[][] {
  const before = [
    step,
    melt.soap.name,
    toCell(sum(melt.shapes.map((shape) => shape.fills))),
    amountCell(melt.neededG),
    amountCell(melt.meltG),
  ];
  const after = [
    toCell(sum(melt.shapes.map((shape) => shape.sparePieces))),
    amountCell(melt.leftoverG),
  ];
  const remelt = melt.remeltG.isZero()
    ? []
    : [[leftoverName(melt.soap), amountCell(melt.remeltG), 'g']];
  const fresh = melt.ingredients.map(({ line: { ingredient }, amount, measure }) => [
    ingredient.kind === 'soap' ? ingredient.soap.name : ingredient.material.name,
    amountCell(amount),
    measure,
  ]);
  return [...remelt, ...fresh].map((ingredient) => [...before, ...ingredient, ...after]);
}

const AMOUNT = makeRecords.MELTSHEET.answers.columns.indexOf('Amount');
const isAmount = (at: number): boolean => at === AMOUNT || at === AMOUNT + 1;

/** A melt's rows for a hand that weighs: an amount less than half a drop is blank, and Mind says why. */
function handRows(melt: Melt, step: number, scaleStepG: Exact): CellAnswer[][] {
  const fresh = melt.ingredients.map(({ amount, measure }) => mindOf(amount, measure, scaleStepG));
  const minds = melt.remeltG.isZero() ? fresh : ['', ...fresh];
  return meltRows(melt, step).map((row, line) => {
    const isNone = row[AMOUNT] === 0;
    return [...row.map((cell, at) => (isNone && isAmount(at) ? '' : cell)), minds[line] ?? ''];
  });
}

function mindOf(amount: Exact, measure: BenchMeasure, scaleStepG: Exact): string {
  if (amount.isZero()) return tooLittle(measure);
  return needsFinerScale(amount, measure, scaleStepG) ? 'on a finer scale' : '';
}

function needRows(batch: SittingAsked, planning: Planning): Result<CellRows> {
  const { book, today } = batch;
  return andThen(sittingOf(batch, planning), (plan) =>
    answer(
      materialNeeds(plan).map(({ material, quantity }) => {
        const stock = onHand(book, itemOfMaterial(material), today);
        return [
          material.name,
          amountCell(quantity),
          material.unit,
          toCell(stock),
          amountCell(notBelowZero(quantity.minus(asStock(stock)))),
        ];
      }),
    ),
  );
}

import {
  findDesign,
  findMold,
  findSoap,
  itemOfMaterial,
  leftoverName,
} from '../src/domain/book/find.ts';
import { type Exact, exact, notBelowZero, sum, toCell } from '../src/domain/kernel/exact.ts';
import { nameKey } from '../src/domain/kernel/names.ts';
import { answer, andThen, notYet, wrong } from '../src/domain/kernel/result.ts';
import { canMake as canMakeBars } from '../src/domain/recipe/can-make.ts';
import type { Measure } from '../src/domain/measure/units.ts';
import { needsFinerScale, tooLittle } from '../src/domain/recipe/hand-amount.ts';
import { leftoversOnHand } from '../src/domain/recipe/leftovers-on-hand.ts';
import { materialNeeds } from '../src/domain/recipe/material-needs.ts';
import { type MeltPlan, planByHand, planMelts } from '../src/domain/recipe/melt-plan.ts';
import { baseShare, type Melt, noLeftovers, soapForFills } from '../src/domain/recipe/melt.ts';
import { plainPlan, USUAL_BARS } from '../src/domain/recipe/plain-plan.ts';
import { countTiles } from '../src/domain/recipe/tile-count.ts';
import { onHand } from '../src/domain/stock/on-hand.ts';
import { amountCell, settle, settleNumber, type SpillAnswer } from './answer.ts';
import {
  booleanArgument,
  nameArgument,
  namesArgument,
  optionalCount,
  optionalName,
  optionalNumber,
} from './arguments.ts';
import { bookArgument } from './books.ts';
import { today } from './clock.ts';

/**
 * Grams of soap for fills of a mold, with the soap scraped off; with a colour, grams of base in it.
 * @customfunction BASEPERMOLD
 * @param {any} mold Name of the mold, as in Molds.
 * @param {any} book The cell named Book.
 * @param {any} [fills] How many fills; 1 if blank.
 * @param {any} [colour] A colour, to get only the grams of base in that soap.
 * @returns {number} Grams.
 */
export function basePerMold(mold: any, book: any, fills?: any, colour?: any): number {
  const pourBook = bookArgument(book);
  const count = optionalNumber(fills, 'fills') ?? 1;
  const soapName = optionalName(colour, 'colour');
  const grams = andThen(findMold(pourBook, nameArgument(mold, 'mold')), (found) => {
    if (!Number.isInteger(count) || count < 0)
      return wrong(`fills is ${count}. A mold is filled whole: give a whole number, 0 or more.`);
    return found.fillG.isZero()
      ? notYet(`Fill in Fill g for ${found.name} in Molds: the grams of one full fill.`)
      : answer(soapForFills(found, exact(count)));
  });
  if (soapName === undefined) return settleNumber(grams);
  return settleNumber(
    andThen(grams, (g) =>
      andThen(findSoap(pourBook, soapName), (soap) => answer(g.times(baseShare(soap)))),
    ),
  );
}

/**
 * Counts the tiles of each colour in a mosaic pattern, most first; with a colour, its number of tiles.
 * @customfunction TILECOUNT
 * @param {any[][]} pattern Cells with a colour's name for each tile; blank cells are no tile.
 * @param {any} [colour] A colour, to get its count alone.
 * @returns {any[][]} Colour and Tiles, or one number.
 */
export function tileCount(pattern: any[][], colour?: any): any[][] {
  const counts = countTiles(namesArgument(pattern, 'pattern'));
  const wanted = optionalName(colour, 'colour');
  if (wanted !== undefined) {
    const count = counts.find((found) => nameKey(found.colour) === nameKey(wanted));
    return [[count?.tiles ?? 0]];
  }
  return [['Colour', 'Tiles'], ...counts.map(({ colour: name, tiles }) => [name, tiles])];
}

/**
 * What to weigh out for a batch, colour by colour in pouring order, one row for each ingredient.
 * @customfunction MELTSHEET
 * @param {any} design Name of the design, as in Designs.
 * @param {any} bars Good bars wanted; 12 if blank.
 * @param {any} book The cell named Book.
 * @param {any} [useLeftovers] TRUE melts leftover soap first and lays spare tiles first; FALSE if blank.
 * @returns {any[][]} Step, Colour, Fills, Needed g, Melt g, Ingredient, Amount, Unit, Spare tiles, Leftover g.
 */
export function meltSheet(design: any, bars: any, book: any, useLeftovers?: any): any[][] {
  const plan = planArgument(design, bars, book, useLeftovers, exactly);
  return [meltHeader, ...meltsOf(plan).flatMap((melt, index) => meltRows(melt, index + 1))];
}

/**
 * MELTSHEET in amounts that a scale and a dropper can do; recording the pour takes just these.
 * @customfunction WEIGHOUT
 * @param {any} design Name of the design, as in Designs.
 * @param {any} bars Good bars wanted; 12 if blank.
 * @param {any} book The cell named Book.
 * @param {any} [useLeftovers] TRUE melts leftover soap first and lays spare tiles first; FALSE if blank.
 * @returns {any[][]} The columns of MELTSHEET, then Mind; an Amount less than half a drop is blank.
 */
export function weighOut(design: any, bars: any, book: any, useLeftovers?: any): any[][] {
  const plan = planArgument(design, bars, book, useLeftovers, byHand);
  const rows = meltsOf(plan).flatMap((melt, index) => {
    const fresh = melt.ingredients.map(({ amount, measure }) =>
      mindOf(amount, measure, plan.scaleStepG),
    );
    const minds = melt.remeltG.isZero() ? fresh : ['', ...fresh];
    return meltRows(melt, index + 1).map((row, line) => {
      const isNone = row[AMOUNT] === 0;
      return [...row.map((cell, at) => (isNone && isAmount(at) ? '' : cell)), minds[line] ?? ''];
    });
  });
  return [[...meltHeader, 'Mind'], ...rows];
}

const meltHeader = [
  'Step',
  'Colour',
  'Fills',
  'Needed g',
  'Melt g',
  'Ingredient',
  'Amount',
  'Unit',
  'Spare tiles',
  'Leftover g',
];
const AMOUNT = meltHeader.indexOf('Amount');
const isAmount = (at: number): boolean => at === AMOUNT || at === AMOUNT + 1;

function mindOf(amount: Exact, measure: Measure, scaleStepG: Exact): string {
  if (amount.isZero()) return tooLittle(measure);
  return needsFinerScale(amount, measure, scaleStepG) ? 'on a finer scale' : '';
}

const meltsOf = ({ melts }: MeltPlan): readonly Melt[] =>
  melts.filter((melt) => !melt.meltG.isZero());

function meltRows(melt: Melt, step: number): SpillAnswer {
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

/**
 * Materials that a batch takes from stock, what is on hand today, and what is short.
 * @customfunction MATERIALS
 * @param {any} design Name of the design, as in Designs.
 * @param {any} bars Good bars wanted; 12 if blank.
 * @param {any} book The cell named Book.
 * @param {any} [useLeftovers] TRUE melts leftover soap first and lays spare tiles first; FALSE if blank.
 * @returns {any[][]} Material, Amount, Unit, On hand, Short.
 */
export function materials(design: any, bars: any, book: any, useLeftovers?: any): any[][] {
  return needRows(planArgument(design, bars, book, useLeftovers, exactly), book);
}

/**
 * MATERIALS as WEIGHOUT weighs it out: what recording the pour will take from stock.
 * @customfunction TAKEOUT
 * @param {any} design Name of the design, as in Designs.
 * @param {any} bars Good bars wanted; 12 if blank.
 * @param {any} book The cell named Book.
 * @param {any} [useLeftovers] TRUE melts leftover soap first and lays spare tiles first; FALSE if blank.
 * @returns {any[][]} Material, Amount, Unit, On hand, Short.
 */
export function takeOut(design: any, bars: any, book: any, useLeftovers?: any): any[][] {
  return needRows(planArgument(design, bars, book, useLeftovers, byHand), book);
}

function needRows(plan: MeltPlan, book: unknown): SpillAnswer {
  const pourBook = bookArgument(book);
  const rows = materialNeeds(plan).map(({ material, quantity }) => {
    const stock = onHand(pourBook, itemOfMaterial(material), today());
    return [
      material.name,
      amountCell(quantity),
      material.unit,
      toCell(stock),
      amountCell(notBelowZero(quantity.minus(stock))),
    ];
  });
  return [['Material', 'Amount', 'Unit', 'On hand', 'Short'], ...rows];
}

/**
 * The most whole good bars of a design that today's stock allows.
 * @customfunction CANMAKE
 * @param {any} design Name of the design, as in Designs.
 * @param {any} book The cell named Book.
 * @returns {number} Bars.
 */
export function canMake(design: any, book: any): number {
  const pourBook = bookArgument(book);
  return settle(
    andThen(findDesign(pourBook, nameArgument(design, 'design')), (found) =>
      canMakeBars(pourBook, found, today()),
    ),
  );
}

/** How a plan is made where no leftovers are used, and where they are. */
interface Planning {
  readonly plain: typeof plainPlan;
  readonly thrifty: typeof planMelts;
}

const exactly: Planning = { plain: plainPlan, thrifty: planMelts };
const byHand: Planning = {
  plain: (design, bars, settings) => planByHand(design, bars, settings, noLeftovers),
  thrifty: planByHand,
};

function planArgument(
  design: unknown,
  bars: unknown,
  book: unknown,
  useLeftovers: unknown,
  { plain, thrifty }: Planning,
): MeltPlan {
  const pourBook = bookArgument(book);
  const use = booleanArgument(useLeftovers, 'use leftovers', false);
  const found = settle(findDesign(pourBook, nameArgument(design, 'design')));
  const count = optionalCount(bars, 'bars') ?? USUAL_BARS;
  return settle(
    use
      ? thrifty(found, count, pourBook.settings, leftoversOnHand(pourBook, today(), true))
      : plain(found, count, pourBook.settings),
  );
}

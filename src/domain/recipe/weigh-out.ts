import { asGrams, asStock, type Grams, type InStock } from '../kernel/measured.ts';
import type { RecipeLine, Soap } from '../book/book.ts';
import { type Exact, notBelowZero, one, roundUpTo, sum, zero } from '../kernel/exact.ts';
import { handAmount, handStep } from './hand-amount.ts';

/** How much of one line of a recipe goes into one melt. */
export interface WeighedIngredient {
  readonly line: RecipeLine;
  /** In `measure`; parts are weighed in g. */
  readonly amount: Exact;
  readonly measure: 'g' | 'ml' | 'drops';
  readonly g: Grams;
  /** In the ingredient's stock unit. */
  readonly quantity: InStock;
}

/** A recipe scaled to the grams wanted (contract §3.6). */
export function weighExactly(soap: Soap, wantedG: Exact): WeighedIngredient[] {
  if (wantedG.isZero()) return [];
  return soap.lines.map((line) => {
    // Multiplied before divided: 40 g of a recipe of 3 g + 3 g is 20 g of each, not 20.00…01.
    const g = asGrams(line.g.times(wantedG).div(soap.recipeG));
    const amount = line.amount.eq(line.g) ? g : line.amount.times(wantedG).div(soap.recipeG);
    return { line, amount, measure: measureOf(line), g, quantity: inStock(line, g) };
  });
}

/**
 * The same recipe in amounts that a hand can measure: each line to the nearest step of its scale or
 * dropper, and the heaviest, most often the base, takes up what that leaves. It is rounded up, so what
 * is weighed never comes to less than the melt, nor to a step more.
 */
export function weighByHand(soap: Soap, wantedG: Exact, scaleStepG: Exact): WeighedIngredient[] {
  const exactly = weighExactly(soap, wantedG);
  const heaviest = exactly.reduce<WeighedIngredient | undefined>(
    (most, each) => (most === undefined || each.g.gt(most.g) ? each : most),
    undefined,
  );
  const others = exactly.map((each) =>
    each === heaviest
      ? each
      : measuredOut(each.line, handAmount(each.amount, each.measure, scaleStepG)),
  );
  const othersG = sum(others.map((each) => (each === heaviest ? zero : each.g)));
  return others.map((each) => {
    if (each !== heaviest) return each;
    const { line, measure } = each;
    const left = notBelowZero(wantedG.minus(othersG))
      .times(line.amount)
      .div(line.g)
      .toDecimalPlaces(NOISE_DECIMALS);
    return measuredOut(line, roundUpTo(left, handStep(left, measure, scaleStepG)));
  });
}

/** What thirds lose in the fortieth digit must not tip the base over the next step. */
const NOISE_DECIMALS = 12;

/** An amount of a recipe's line, in the line's own measure. */
export function measuredOut(line: RecipeLine, amount: Exact): WeighedIngredient {
  const g = asGrams(amount.times(line.g).div(line.amount));
  return { line, amount, measure: measureOf(line), g, quantity: inStock(line, g) };
}

/** Most materials are kept in grams, where nothing is to be multiplied. */
const inStock = ({ stockPerG }: RecipeLine, g: Grams): InStock =>
  asStock(stockPerG.eq(one) ? g : g.times(stockPerG));

const measureOf = ({ measure }: RecipeLine) => (measure === 'parts' ? 'g' : measure);

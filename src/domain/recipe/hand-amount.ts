import { type Exact, exact, one, roundTo } from '../kernel/exact.ts';
import { type BenchMeasure, benchUnitOf, findUnit, type StockUnit } from '../measure/units.ts';

/** Milligrams and microlitres: finer than any scale or dropper, and short enough to read in the ledger. */
const FINEST = exact(0.001);
const TENTH = exact(0.1);
const DROP = exact(1);

/** Below ten steps one step more or less shows in the soap; such a pinch is weighed on a finer scale. */
const FEWEST_STEPS = 10;

/**
 * The step in which a hand measures an amount out: whole drops; ml to a tenth; g to the scale step (a
 * tenth where that is 0). What is less than ten steps is measured ten times finer, as often as need
 * be, so that no pinch of mica is rounded away. Pieces are as the recipe says, to what the ledger keeps.
 */
export function handStep(amount: Exact, unit: BenchMeasure, scaleStepG: Exact): Exact {
  if (unit === 'drops') return DROP;
  if (unit === 'each') return FINEST;
  let step = unit === 'g' && !scaleStepG.isZero() ? scaleStepG : TENTH;
  while (amount.lt(step.times(FEWEST_STEPS)) && step.gt(FINEST)) step = step.div(10);
  return step.lt(FINEST) ? FINEST : step;
}

/** A quantity in its stock unit as the bench measures it, in g, ml or pieces. */
export const onBench = (quantity: Exact, unit: StockUnit): Exact => quantity.times(sizeOf(unit));

/** What was measured on the bench, in the stock unit. */
export const inStock = (measured: Exact, unit: StockUnit): Exact => measured.div(sizeOf(unit));

/** Bench units in a stock unit: 453.59237 g in a pound. */
const sizeOf = (unit: StockUnit): Exact => findUnit(unit)?.size ?? one;

/** The nearest quantity in its stock unit that a hand can measure out. */
export const handQuantity = (quantity: Exact, unit: StockUnit, scaleStepG: Exact): Exact =>
  inStock(handAmount(onBench(quantity, unit), benchUnitOf(unit), scaleStepG), unit);

/** Whether it takes a scale finer than the workbook's own. */
export function needsFinerScale(amount: Exact, unit: BenchMeasure, scaleStepG: Exact): boolean {
  return unit === 'g' && !scaleStepG.isZero() && !amount.mod(scaleStepG).isZero();
}

/** What to say where it comes to nothing that a hand can measure. */
export function tooLittle(unit: BenchMeasure): string {
  return unit === 'drops'
    ? 'less than half a drop: leave it out, or melt more'
    : 'too little to measure: leave it out, or make more';
}

/** The nearest amount that a hand can measure out; 0 drops where it is less than half of one. */
export function handAmount(amount: Exact, unit: BenchMeasure, scaleStepG: Exact): Exact {
  return roundTo(amount, handStep(amount, unit, scaleStepG));
}

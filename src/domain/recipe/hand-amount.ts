import { type Exact, exact, roundTo } from '../kernel/exact.ts';
import type { Measure } from '../measure/units.ts';

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
export function handStep(amount: Exact, unit: Measure, scaleStepG: Exact): Exact {
  if (unit === 'drops') return DROP;
  if (unit === 'each') return FINEST;
  let step = unit === 'g' && !scaleStepG.isZero() ? scaleStepG : TENTH;
  while (amount.lt(step.times(FEWEST_STEPS)) && step.gt(FINEST)) step = step.div(10);
  return step.lt(FINEST) ? FINEST : step;
}

/** Whether it takes a scale finer than the workbook's own. */
export function needsFinerScale(amount: Exact, unit: Measure, scaleStepG: Exact): boolean {
  return unit === 'g' && !scaleStepG.isZero() && !amount.mod(scaleStepG).isZero();
}

/** What to say where it comes to nothing that a hand can measure. */
export function tooLittle(unit: Measure): string {
  return unit === 'drops'
    ? 'less than half a drop: leave it out, or melt more'
    : 'too little to measure: leave it out, or make more';
}

/** The nearest amount that a hand can measure out; 0 drops where it is less than half of one. */
export function handAmount(amount: Exact, unit: Measure, scaleStepG: Exact): Exact {
  return roundTo(amount, handStep(amount, unit, scaleStepG));
}

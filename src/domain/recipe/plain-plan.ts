import type { Book, Design } from '../book/book.ts';
import { oncePerKey } from '../kernel/once-per.ts';
import { andThen, answer, type Result } from '../kernel/result.ts';
import { type MaterialQuantities, materialQuantities } from './material-needs.ts';
import { type MeltPlan, noLeftovers, planMelts } from './melt-plan.ts';

/** Costs, weighing lists and shopping ask for the same few batches of a design. */
const MOST_PLANS = 4;
/** What CANMAKE tries on its way to the most bars; a few numbers each. */
const MOST_QUANTITIES = 50;

const plans = oncePerKey<Design, Result<MeltPlan>>(MOST_PLANS);
const quantities = oncePerKey<Design, Result<MaterialQuantities>>(MOST_QUANTITIES);

/**
 * `planMelts` as if no leftovers or spares were there. Such a plan hangs on no move, so it is kept
 * with its design, which books read one after another share while the catalogue stays as it is.
 */
export function plainPlan(
  design: Design,
  bars: number,
  settings: Book['settings'],
): Result<MeltPlan> {
  return plans(design, keyOf(bars, settings), () => planMelts(design, bars, settings, noLeftovers));
}

/** What a plain plan takes from stock, kept where the plan itself would be too large to keep. */
export function plainQuantities(
  design: Design,
  bars: number,
  settings: Book['settings'],
): Result<MaterialQuantities> {
  return quantities(design, keyOf(bars, settings), () =>
    andThen(planMelts(design, bars, settings, noLeftovers), (plan) =>
      answer(materialQuantities(plan)),
    ),
  );
}

const keyOf = (bars: number, { scaleStepG }: Book['settings']): string => `${bars} ${scaleStepG}`;

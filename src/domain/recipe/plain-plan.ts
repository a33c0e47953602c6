import type { Book, Design } from '../book/book.ts';
import { oncePerKey } from '../kernel/once-per.ts';
import type { Result } from '../kernel/result.ts';
import { type MeltPlan, planMelts } from './melt-plan.ts';
import { noLeftovers } from './melt.ts';

/** A batch of a dozen where no number is given. */
export const USUAL_BARS = 12;

/** Costs, weighing lists and shopping ask for the same few batches of a design. */
const MOST_PLANS = 4;

const plans = oncePerKey<Design, Result<MeltPlan>>(MOST_PLANS);

/**
 * `planMelts` as if no leftovers or spares were there. Such a plan hangs on no move, so it is kept
 * with its design, which books read one after another share while the catalogue stays as it is.
 */
export function plainPlan(
  design: Design,
  bars: number,
  settings: Book['settings'],
): Result<MeltPlan> {
  const key = `${bars} ${settings.scaleStepG}`;
  return plans(design, key, () => planMelts(design, bars, settings, noLeftovers));
}

import { asMoney, type Money } from '../kernel/measured.ts';
import type { Mold } from '../book/book.ts';
import { addTo, type Exact, zero } from '../kernel/exact.ts';
import { all, andThen, answer, notYet, type Result } from '../kernel/result.ts';
import type { MeltPlan } from '../recipe/melt-plan.ts';

/** What one mold's wear costs a batch. */
export interface MoldWear {
  readonly mold: Mold;
  readonly cost: Money;
}

/** What a batch wears off each mold that its plan fills, the bar mold with them. */
export function moldWear(plan: MeltPlan): Result<MoldWear[]> {
  return all(
    [...fillsByMold(plan)].map(([mold, fills]) =>
      andThen(wearPerFill(mold), (perFill) =>
        answer({ mold, cost: asMoney(perFill.times(fills)) }),
      ),
    ),
  );
}

/** Price ÷ Life fills; a mold without a price costs nothing to use. */
function wearPerFill(mold: Mold): Result<Exact> {
  if (mold.price === undefined) return answer(zero);
  if (mold.lifeFills === undefined) {
    return notYet(`Fill in Life fills for ${mold.name} in Molds: how many fills it lasts.`);
  }
  return answer(mold.price.div(mold.lifeFills));
}

function fillsByMold(plan: MeltPlan): Map<Mold, Exact> {
  const fills = new Map<Mold, Exact>();
  for (const shape of plan.melts.flatMap((melt) => melt.shapes)) {
    addTo(fills, shape.mold, shape.fills);
  }
  const { barMold } = plan.design;
  if (barMold !== undefined) fills.set(barMold, plan.barsToStart.div(barMold.cavities).ceil());
  return fills;
}

import { asGrams } from '../../domain/kernel/measured.ts';
import { labourMinutes } from '../../domain/recipe/labour.ts';
import type { Book, Design } from '../../domain/book/book.ts';
import { findDesign, leftoverName } from '../../domain/book/find.ts';
import { assert } from '../../domain/kernel/assert.ts';
import type { Day } from '../../domain/kernel/day.ts';
import { type Exact, exact } from '../../domain/kernel/exact.ts';
import { planPour } from '../../domain/ledger/plan-pour.ts';
import { postBatch } from '../../domain/ledger/post-batch.ts';
import type { Pour } from '../../domain/ledger/pour.ts';
import type { MeltPlan } from '../../domain/recipe/melt-plan.ts';
import { changeForBatch } from '../../workbook/change.ts';
import { type Diary, sound } from './diary.ts';
import { expectedBars, popularity } from './season.ts';
import { onHandOf } from './take-out.ts';

/** What is on hand should last so long; below this share of it, more is poured. */
const COVER_DAYS = 35;
const LOW = 0.62;
/** Setting up is not worth it for less. */
const FEWEST_FILLS = 2;

/** The design that runs out first and how many good bars of it to pour; undefined while there is enough. */
export function nextPour(book: Book, day: Day): { design: string; bars: number } | undefined {
  const wanted = Object.entries(popularity).map(([design, share]) => {
    const target = expectedBars(day, COVER_DAYS) * share + 3;
    const stock = Number(onHandOf(book, design, day));
    return { design, cover: stock / target, lacking: target - stock };
  });
  const [first] = wanted.sort((a, b) => a.cover - b.cover);
  if (first === undefined || first.cover > LOW) return undefined;
  return {
    design: first.design,
    bars: barsOfWholeFills(sound(findDesign(book, first.design)), first.lacking),
  };
}

/** The good bars that whole bar molds are planned to give, by as many fills as `lacking` asks for and are owned. */
function barsOfWholeFills({ barMold, yieldShare }: Design, lacking: number): number {
  assert(barMold?.sections !== undefined, 'a bar of the demo has no mold');
  const goodOfOne = barMold.cavities.times(yieldShare);
  const asked = Math.max(FEWEST_FILLS, Math.ceil(lacking / goodOfOne.toNumber()));
  return goodOfOne.times(Math.min(asked, barMold.sections.toNumber())).floor().toNumber();
}

/** Records one pour through the pane's own posting. False where stock does not allow it. */
export function recordPour(
  diary: Diary,
  {
    design: name,
    bars,
    ...pour
  }: Pick<Pour, 'batch' | 'poured' | 'by'> & { readonly design: string; readonly bars: number },
  roll: () => number,
): boolean {
  const book = diary.book();
  const design = sound(findDesign(book, name));
  const wanted = { design, bars, poured: pour.poured, useLeftovers: true };
  const plan = sound(planPour(book, wanted, pour.poured));
  const seconds = roll() < 0.35 ? 1 : roll() < 0.15 ? 2 : 0;
  const started = plan.barsToStart.toNumber();
  const planned = labourMinutes(design, started).toNumber();
  const answer = sound(
    postBatch(
      book,
      {
        ...pour,
        plan,
        good: started - seconds,
        seconds,
        lost: 0,
        minutes: Math.round(planned * (0.9 + 0.3 * roll())),
        weighed: new Map(),
        sparePieces: new Map(),
        leftoverG: weighedLeftovers(plan, roll),
        countIsOff: new Set(),
        note: seconds === 0 ? '' : 'Seconds given away',
      },
      pour.poured,
    ),
  );
  if (answer.kind === 'short') return false;
  diary.apply(sound(changeForBatch(answer.posting, diary.names())));
  return true;
}

/** A little of some melts stays in the jug, so what is weighed back is less than planned. */
function weighedLeftovers(plan: MeltPlan, roll: () => number): Map<string, Exact> {
  const weighed = new Map<string, Exact>();
  for (const { soap, leftoverG } of plan.melts) {
    const lost = exact(Math.floor(roll() * 3));
    if (leftoverG.gt(4))
      weighed.set(leftoverName(soap), leftoverG.minus(asGrams(lost)).toDecimalPlaces(1));
  }
  return weighed;
}

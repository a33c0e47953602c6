import type { Design, Mold } from '../book/book.ts';
import type { Day } from '../kernel/day.ts';
import { fillsFor, minutesFor } from './capacity.ts';
import type { DayBook } from './day-book.ts';
import { largest } from './largest.ts';
import type { ScheduleSettings, Work } from './work.ts';
import { isWorkDay } from './work-days.ts';

/** Whether the tiles and embeds of a single bar take more sections than a day has. */
export const needsShapingAhead = (design: Design, days: DayBook): boolean =>
  !days.couldTake(fillsFor(design, 1).pieces);

/**
 * Bars poured on one day whose tiles and embeds are shaped on that and earlier days, but none before
 * `from`. Labour is taken to be shared evenly by all fills and the pour, since Designs gives it for the
 * whole bar. Takes the room; undefined where there is none.
 */
export function shapeAhead(
  design: Design,
  bars: number,
  day: Day,
  from: Day,
  settings: ScheduleSettings,
  days: DayBook,
): { readonly bars: number; readonly work: readonly Work[] } | undefined {
  const planFor = (count: number): Placed[] | undefined => {
    const { pieces, bars: barFills } = fillsFor(design, count);
    if (!days.hasRoom(day, minutesFor(design, count), barFills)) return undefined;
    const steps = total(pieces) + 1;
    const setup = minutesFor(design, 0);
    const perFill = (minutesFor(design, count) - setup) / steps;
    const shaping = spread(pieces, perFill, { from, to: day }, settings, days);
    const pour: Placed = { day, task: 'pour', minutes: setup + perFill, fills: barFills };
    return shaping && [...shaping, pour];
  };
  const count = largest(bars, (some) => planFor(some) !== undefined);
  const work = count === 0 ? undefined : planFor(count);
  if (work === undefined) return undefined;
  for (const { day: at, minutes, fills } of work) days.take(at, minutes, fills);
  return {
    bars: count,
    work: work.map(({ day: at, task, minutes }) => ({ day: at, task, minutes })),
  };
}

interface Placed extends Work {
  readonly fills: ReadonlyMap<Mold, number>;
}

/** Puts each fill on the latest day that has a section and the minutes free; undefined if some find none. */
function spread(
  pieces: ReadonlyMap<Mold, number>,
  perFill: number,
  { from, to }: { readonly from: Day; readonly to: Day },
  settings: ScheduleSettings,
  days: DayBook,
): Placed[] | undefined {
  const left = new Map(pieces);
  const plan: Placed[] = [];
  for (let day = to; left.size > 0; day -= 1) {
    if (day < from) return undefined;
    if (!isWorkDay(settings, day)) continue;
    // The pour day was found to have room for all of the work, so the pour itself is not in the way.
    let minutes = days.freeMinutes(day);
    const here = new Map<Mold, number>();
    for (const [mold, wanted] of left) {
      const inTime = perFill === 0 ? wanted : Math.floor(minutes / perFill + 1e-9);
      const fills = Math.min(wanted, days.freeFills(day, mold), inTime);
      if (fills <= 0) continue;
      minutes -= fills * perFill;
      here.set(mold, fills);
      if (fills === wanted) left.delete(mold);
      else left.set(mold, wanted - fills);
    }
    if (here.size > 0)
      plan.unshift({ day, task: 'shape', minutes: perFill * total(here), fills: here });
  }
  return plan;
}

const total = (fills: ReadonlyMap<Mold, number>): number =>
  [...fills.values()].reduce((sum, count) => sum + count, 0);

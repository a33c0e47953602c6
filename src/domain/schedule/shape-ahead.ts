import type { Design, Mold } from '../book/book.ts';
import type { Day } from '../kernel/day.ts';
import { fillsFor, minutesFor } from './capacity.ts';
import type { DayBook } from './day-book.ts';
import { largest } from './largest.ts';
import type { ScheduleSettings, Work } from './work.ts';
import { isWorkDay } from './work-days.ts';

const MOST_DAYS_AHEAD = 366;

/**
 * Bars poured on one day whose tiles and embeds are shaped on that and earlier days, for when one day
 * has not sections enough even for a single bar. Labour is taken to be shared evenly by all fills and
 * the pour, since Designs gives it for the whole bar. Undefined where the day can't take the pour.
 */
export function shapeAhead(
  design: Design,
  bars: number,
  day: Day,
  settings: ScheduleSettings,
  days: DayBook,
): { readonly bars: number; readonly work: readonly Work[] } | undefined {
  // Where a day can take a bar whole, shaping ahead would only crowd the days before it.
  if (days.couldTake([...fillsFor(design, 1).pieces])) return undefined;
  const count = largest(bars, (some) =>
    days.hasRoom(day, minutesFor(design, some), fillsFor(design, some).bars),
  );
  if (count === 0) return undefined;
  const { pieces, bars: barFills } = fillsFor(design, count);
  const steps = [...pieces.values()].reduce((sum, fills) => sum + fills, 1);
  const setup = minutesFor(design, 0);
  const perFill = (minutesFor(design, count) - setup) / steps;
  const pourMinutes = setup + perFill;
  const plan = spread(pieces, perFill, day, settings, days);
  if (plan === undefined) return undefined;
  const work: Work[] = [{ day, task: 'pour', minutes: pourMinutes, fills: [...barFills] }];
  for (const [shapeDay, fills] of plan) {
    const minutes = perFill * total(fills);
    work.push({ day: shapeDay, task: 'shape', minutes, fills: [...fills] });
  }
  for (const { day: at, minutes, fills } of work) days.take(at, minutes, fills);
  return { bars: count, work };
}

/** Puts each fill on the latest day that has a section and the minutes free; undefined if some find none. */
function spread(
  pieces: ReadonlyMap<Mold, number>,
  perFill: number,
  pourDay: Day,
  settings: ScheduleSettings,
  days: DayBook,
): Map<Day, Map<Mold, number>> | undefined {
  const left = new Map(pieces);
  const plan = new Map<Day, Map<Mold, number>>();
  for (let day = pourDay; left.size > 0; day -= 1) {
    if (day < pourDay - MOST_DAYS_AHEAD) return undefined;
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
    if (here.size > 0) plan.set(day, here);
  }
  return plan;
}

const total = (fills: ReadonlyMap<Mold, number>): number =>
  [...fills.values()].reduce((sum, count) => sum + count, 0);

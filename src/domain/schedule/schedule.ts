import type { Design, Mold } from '../book/book.ts';
import { type Day, wholeDay } from '../kernel/day.ts';
import {
  type Capacity,
  capacityOf,
  dryingDays,
  fillsFor,
  minutesFor,
  settingDays,
} from './capacity.ts';
import { DayBook } from './day-book.ts';
import { largest } from './largest.ts';
import type { OpenLine } from './plan-lines.ts';
import { shapeAhead } from './shape-ahead.ts';
import type { ScheduleSettings, Work } from './work.ts';
import { hasWorkDay, isWorkDay, workDayFrom } from './work-days.ts';

/** Bars of one line that are poured together on one day, with the work they take. */
export interface Part {
  readonly bars: number;
  readonly work: readonly Work[];
  readonly firstDay: Day;
  readonly pourDay: Day;
  /** First day they can be sold. */
  readonly readyOn: Day;
}

export interface LineSchedule {
  readonly open: OpenLine;
  /** The latest pour first. */
  readonly parts: readonly Part[];
  /** Bars that no day, however early, has room for. */
  readonly barsWithoutDay: number;
}

/** Further back than this nobody plans a fair. */
const MOST_DAYS_BACK = 400;

/**
 * Places the work of each line on the latest days that have room, back from its Ready by, the earliest
 * line first. Days before today are used as well, so that the caller sees by how much a plan is late.
 * Lines with nothing to make have no parts.
 */
export function schedule(
  lines: readonly OpenLine[],
  settings: ScheduleSettings,
  capacity: Capacity = capacityOf(settings),
): LineSchedule[] {
  if (!hasWorkDay(settings))
    return lines.map((open) => ({ open, parts: [], barsWithoutDay: open.barsToMake }));
  const days = new DayBook(capacity);
  return lines.map((open) => placeLine(open, settings, capacity, days));
}

/** Places one line on the latest days that still have room, and takes that room. */
export function placeLine(
  open: OpenLine,
  settings: ScheduleSettings,
  capacity: Capacity,
  days: DayBook,
): LineSchedule {
  const { design, readyBy } = open.line;
  const parts: Part[] = [];
  let left = open.barsToMake;
  const last = wholeDay(readyBy) - dryingDays(design);
  for (let day = last; left > 0 && day > last - MOST_DAYS_BACK; day -= 1) {
    const unmoldDay = unmoldOn(design, day, settings, capacity);
    if (!isWorkDay(settings, day) || unmoldDay > wholeDay(readyBy)) continue;
    const part =
      placeWhole(design, left, day, days) ?? shapeAhead(design, left, day, settings, days);
    if (part === undefined) {
      // A day without any work on it that can't take one bar stands for all the days before it.
      if (days.isEmpty(day)) break;
      continue;
    }
    left -= part.bars;
    parts.push(finished(part, day, unmoldDay, design));
  }
  return { open, parts, barsWithoutDay: left };
}

/** As many of the bars as one day has room for, pieces and pour together; undefined if none. */
function placeWhole(design: Design, bars: number, day: Day, days: DayBook) {
  const fits = (count: number): boolean => {
    const { pieces, bars: barFills } = fillsFor(design, count);
    return days.hasRoom(day, minutesFor(design, count), [...pieces, ...barFills]);
  };
  const most = largest(bars, fits);
  if (most === 0) return undefined;
  const { pieces, bars: barFills } = fillsFor(design, most);
  const minutes = minutesFor(design, most);
  const fills = [...pieces, ...barFills];
  days.take(day, minutes, fills);
  return { bars: most, work: [{ day, task: 'pour', minutes, fills }] as const };
}

function unmoldOn(
  design: Design,
  pourDay: Day,
  settings: ScheduleSettings,
  capacity: Capacity,
): Day {
  const set = settingDays(design, capacity);
  return set === 0 ? pourDay : workDayFrom(settings, pourDay + set);
}

function finished(
  part: { readonly bars: number; readonly work: readonly Work[] },
  pourDay: Day,
  unmoldDay: Day,
  design: Design,
): Part {
  // Unmolding is part of the labour already counted on the pour.
  const unmold: Work[] =
    unmoldDay > pourDay ? [{ day: unmoldDay, task: 'unmold', minutes: 0, fills: [] }] : [];
  return {
    bars: part.bars,
    work: [...part.work, ...unmold],
    firstDay: Math.min(...part.work.map(({ day }) => day)),
    pourDay,
    readyOn: Math.max(pourDay + dryingDays(design), unmoldDay),
  };
}

/** Every mold that work on the lines goes through. */
export function moldsOf(lines: readonly OpenLine[]): Set<Mold> {
  const molds = new Set<Mold>();
  for (const { line, barsToMake } of lines) {
    if (barsToMake === 0) continue;
    const { pieces, bars } = fillsFor(line.design, 1);
    for (const mold of [...pieces.keys(), ...bars.keys()]) molds.add(mold);
  }
  return molds;
}

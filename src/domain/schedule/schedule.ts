import { evenOut } from '../batching/even-out.ts';
import { fewestSetups, type SetupPlan } from '../batching/fewest-setups.ts';
import type { SearchEffort } from '../batching/plan-batches.ts';
import type { Design, Mold, PlanLine } from '../book/book.ts';
import { addUnder } from '../kernel/add-under.ts';
import type { Day } from '../kernel/day.ts';
import { toCell } from '../kernel/exact.ts';
import { type Batch, batchOf, lastPourDay, type WorkTimes } from './batch.ts';
import { type Capacity, capacityOf, fillsFor, minutesFor } from './capacity.ts';
import { DayBook } from './day-book.ts';
import { roomFor } from './day-room.ts';
import type { OpenLine } from './plan-lines.ts';
import { needsShapingAhead, shapeAhead } from './shape-ahead.ts';
import { type BarsForLine, type LineByDay, shareOut } from './share-out.ts';
import type { ScheduleSettings } from './work.ts';
import { hasWorkDay, workDaysBefore } from './work-days.ts';

export interface Schedule {
  /** In order of their pours, each design once a day. */
  readonly batches: readonly ScheduledBatch[];
  /** By line, good bars that find no day. */
  readonly missing: ReadonlyMap<PlanLine, number>;
  /** How near to the best the search knows to have come. */
  readonly proof: Pick<SetupPlan, 'setupMinutes' | 'leastMinutes' | 'unmet' | 'leastUnmet'>;
}

export interface ScheduledBatch extends Batch {
  /** The plan lines that it is for, the earliest first. */
  readonly lines: readonly BarsForLine[];
}

export interface ScheduleOptions {
  readonly capacity?: Capacity;
  readonly efforts?: readonly SearchEffort[];
}

/**
 * Whole batches for all lines on the days from `from` on: as few bars without a day as can be, then the
 * fewest minutes of setup, then the latest days, then batches of a design as even as can be.
 */
export function schedule(
  lines: readonly OpenLine[],
  settings: ScheduleSettings,
  from: Day,
  { capacity = capacityOf(settings), efforts }: ScheduleOptions = {},
): Schedule {
  const times = { settings, capacity };
  const byDay = lines
    .filter(({ barsToMake }) => barsToMake > 0)
    .map((open): LineByDay => ({
      open,
      last: hasWorkDay(settings) ? lastPourDay(open, from, times) : undefined,
    }));
  const taken = new DayBook(capacity);
  const ofDesign = new Map<Design, LineByDay[]>();
  for (const line of byDay) {
    if (line.last !== undefined) addUnder(ofDesign, line.open.line.design, line);
  }
  const days = workDaysBefore(
    settings,
    from,
    byDay.flatMap(({ last }) => last ?? []),
  );
  const needs = Array.from(ofDesign, ([design, theirs]) => ({
    design,
    bars: needsOn(days, theirs),
  }));
  const isAhead = ({ design }: NeedsOfDesign): boolean => needsShapingAhead(design, taken);
  const ahead = needs.filter(isAhead).flatMap((each) => shapedAhead(each, days, times, taken));
  const { batches, ...proof } = inWholeBatches(
    needs.filter((each) => !isAhead(each)),
    days,
    times,
    taken,
    efforts,
  );
  const all = [...ahead, ...batches].sort((a, b) => a.pourDay - b.pourDay);
  const { linesOf, missing } = shareOut(byDay, all);
  return {
    batches: all.map((batch) => ({ ...batch, lines: linesOf.get(batch) ?? [] })),
    missing,
    proof,
  };
}

/** Bars of a design by the last day to pour them, by its place among the days of work. */
interface NeedsOfDesign {
  readonly design: Design;
  readonly bars: readonly number[];
}

function needsOn(days: readonly Day[], lines: readonly LineByDay[]): number[] {
  const bars = days.map(() => 0);
  for (const { open, last } of lines) {
    const at = days.indexOf(last ?? NaN);
    bars[at] = (bars[at] ?? 0) + open.barsToMake;
  }
  return bars;
}

/** Batches of a design that a day has not sections enough for, on the latest days with room. */
function shapedAhead(
  { design, bars }: NeedsOfDesign,
  days: readonly Day[],
  times: WorkTimes,
  taken: DayBook,
): Batch[] {
  const batches: Batch[] = [];
  let left = 0;
  for (const [at, day] of [...days.entries()].reverse()) {
    left += bars[at] ?? 0;
    const [from = day] = days;
    const placed = left > 0 && shapeAhead(design, left, day, from, times.settings, taken);
    if (!placed) continue;
    left -= placed.bars;
    batches.push(batchOf(design, placed.bars, day, placed.work, times));
  }
  return batches;
}

function inWholeBatches(
  needs: readonly NeedsOfDesign[],
  days: readonly Day[],
  times: WorkTimes,
  taken: DayBook,
  efforts: readonly SearchEffort[] | undefined,
): Schedule['proof'] & { readonly batches: readonly Batch[] } {
  const room = roomFor(
    needs.map(({ design }) => design),
    days,
    taken,
  );
  const designs = needs.map(({ design, bars }) => ({
    needs: bars,
    setupMinutes: minutesFor(design, 0),
    barMinutes: toCell(design.labourMinutes.div(design.yieldShare)),
  }));
  const minutes = days.map((day) => taken.freeMinutes(day));
  const { batches, ...proof } = fewestSetups({ days, designs, minutes, ...room }, efforts);
  return {
    ...proof,
    batches: evenOut({ designs, ...room }, batches).flatMap(({ design: at, day: on, bars }) => {
      const design = needs[at]?.design;
      const day = days[on];
      if (design === undefined || day === undefined) return [];
      const pour = { day, task: 'pour', minutes: minutesFor(design, bars) } as const;
      return [batchOf(design, bars, day, [pour], times)];
    }),
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

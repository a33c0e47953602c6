import type { Design, Mold } from '../book/book.ts';
import type { BatchProblem } from '../batching/problem.ts';
import type { Day } from '../kernel/day.ts';
import { type Exact, toCell } from '../kernel/exact.ts';
import { wholePieces } from '../recipe/melt.ts';
import { daysInMold, minutesFor, piecesOf, startedBars } from './capacity.ts';
import type { DayBook } from './day-book.ts';

/** Minutes, and pieces for each bar, may be off by this much. */
const ROUNDING = 1e-9;

/** Fills of one soap in one mold for some designs: one section serves them all. */
interface SharedFills {
  readonly mold: Mold;
  readonly pieces: readonly DesignPieces[];
  /** Pieces of one fill that come out whole. */
  readonly cavities: number;
}

interface DesignPieces {
  readonly design: number;
  readonly perBar: number;
}

/**
 * Whether a day has minutes and sections for so many good bars of each design, beside what is on it
 * already. Designs that share a colour share its fills; in bar molds each has its own.
 */
export function roomFor(
  designs: readonly Design[],
  days: readonly Day[],
  taken: DayBook,
): Required<Pick<BatchProblem, 'holds' | 'memory'>> {
  const fills = sharedFills(designs);
  const molds = [...new Set(fills.map(({ mold }) => mold))];
  const reach = new Map(molds.map((mold) => [mold, laterInMold(days, daysInMold(mold))]));
  const limits = days.map((day) => {
    const free = new Map(fills.map(({ mold }) => [mold, taken.freeFills(day, mold)]));
    return {
      minutes: taken.freeMinutes(day),
      free: [...free].filter(([, most]) => most < Infinity),
    };
  });
  const ofMold = new Map(molds.map((mold) => [mold, fills.filter((each) => each.mold === mold)]));
  const work = designs.map((design) => counted((bars) => minutesFor(design, bars)));
  const started = designs.map((design) => counted((bars) => startedBars(design, bars)));
  const fillsOf = ({ pieces, cavities }: SharedFills, bars: readonly number[]): number => {
    let count = 0;
    for (const { design, perBar } of pieces) {
      const some = bars[design] ?? 0;
      if (some > 0) count += perBar * (started[design]?.(some) ?? 0);
    }
    return Math.ceil(count / cavities - ROUNDING);
  };
  const inMold = (mold: Mold, bars: readonly number[]): number => {
    let count = 0;
    for (const shared of ofMold.get(mold) ?? []) count += fillsOf(shared, bars);
    return count;
  };
  const holds: BatchProblem['holds'] = (day, bars, later) => {
    const limit = limits[day];
    if (limit === undefined) return false;
    let minutes = 0;
    for (let design = 0; design < bars.length; design += 1) {
      const some = bars[design] ?? 0;
      if (some > 0) minutes += work[design]?.(some) ?? 0;
    }
    if (minutes > limit.minutes + ROUNDING) return false;
    return limit.free.every(([mold, most]) => {
      let count = inMold(mold, bars);
      // What has not set by then has no section for those poured on later days.
      const until = reach.get(mold)?.[day] ?? 0;
      for (let at = 0; at < until; at += 1) count += inMold(mold, later[at] ?? []);
      return count <= most;
    });
  };
  return { holds, memory: Math.max(0, ...[...reach.values()].flat()) };
}

/** By day, on how many of the next days a fill that stays so many days is still in its mold. */
const laterInMold = (days: readonly Day[], stays: number): number[] =>
  days.map((day, at) => days.slice(at + 1, at + stays).filter((next) => next < day + stays).length);

function sharedFills(designs: readonly Design[]): SharedFills[] {
  const shared = new Map<string, SharedFills & { pieces: DesignPieces[] }>();
  const add = (key: string, mold: Mold, fillMakes: Exact, design: number, perBar: number): void => {
    const known = shared.get(key) ?? { mold, pieces: [], cavities: toCell(fillMakes) };
    known.pieces.push({ design, perBar });
    shared.set(key, known);
  };
  designs.forEach((design, at) => {
    for (const { soap, mold, perBar } of piecesOf(design))
      add(`${mold.name}\n${soap}`, mold, wholePieces(mold), at, toCell(perBar));
    const { barMold } = design;
    if (barMold !== undefined) add(`${barMold.name}\n\n${at}`, barMold, barMold.cavities, at, 1);
  });
  return [...shared.values()];
}

/** Keeps the answers of a sum that is asked for the same counts again and again. */
function counted(work: (bars: number) => number): (bars: number) => number {
  const known: number[] = [];
  return (bars) => (known[bars] ??= work(bars));
}

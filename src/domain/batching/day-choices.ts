import type { Alone } from './alone.ts';

/** What a day could make of each design, and whether these are all ways that can be best. */
export interface DayChoices {
  readonly choices: readonly (readonly number[])[];
  readonly all: boolean;
}

/** What is asked of one day: the bars still to be made of each design, and whether it has room for some. */
export interface DayAsked {
  readonly day: number;
  readonly left: readonly number[];
  readonly alone: readonly Alone[];
  readonly fits: (bars: readonly number[]) => boolean;
  /** What is made takes room from earlier days, so that less of it may be better. */
  readonly isFelt: boolean;
}

/** How many ways of one day are looked at. */
export interface Effort {
  /** All of them, where there are no more than this. */
  readonly allWays: number;
  /** The likely ones, where there are more. */
  readonly someWays: number;
}

/**
 * The ways of one day. Of ways with the same designs only those are worth a look that can't take a bar
 * more: what is made later leaves less to make before, at the cost of the same batches. Where earlier days
 * feel what is made, all are.
 */
export function dayChoices(asked: DayAsked, { allWays, someWays }: Effort): DayChoices {
  const most = asked.left.map((bars, design) => asked.alone[design]?.mostOf(asked.day, bars) ?? 0);
  const open = most.flatMap((bars, design) => (bars > 0 ? [design] : []));
  // All but the last may take any number of bars, and the last what room is left or nothing.
  const free = asked.isFelt ? open : open.slice(0, -1);
  const ways = free.reduce((count, design) => count * ((most[design] ?? 0) + 1), 2);
  return ways <= allWays
    ? { choices: everyWay(asked, most, open), all: true }
    : { choices: likelyWays(asked, someWays), all: false };
}

function everyWay(
  { left, fits, isFelt }: DayAsked,
  most: readonly number[],
  open: readonly number[],
): number[][] {
  const ways: number[][] = [];
  const bars = left.map(() => 0);
  const isFull = (): boolean =>
    isFelt ||
    open.every((design) => {
      const made = bars[design] ?? 0;
      if (made === 0 || made >= (most[design] ?? 0)) return true;
      bars[design] = made + 1;
      const fitsMore = fits(bars);
      bars[design] = made;
      return !fitsMore;
    });
  const choose = (at: number): void => {
    const design = open[at];
    if (design === undefined) {
      if (isFull()) ways.push([...bars]);
      return;
    }
    const fitting = largestFit(bars, design, most[design] ?? 0, fits);
    const isLast = !isFelt && at === open.length - 1;
    for (let made = fitting; made >= 0; made = isLast && made > 0 ? 0 : made - 1) {
      bars[design] = made;
      choose(at + 1);
    }
    bars[design] = 0;
  };
  choose(0);
  return ways;
}

/** The largest number of bars of a design that fits beside the others, up to a most. Leaves the list as it was. */
export function largestFit(
  bars: number[],
  design: number,
  most: number,
  fits: (bars: readonly number[]) => boolean,
): number {
  const before = bars[design] ?? 0;
  let [enough, tooMany] = [0, most + 1];
  // The whole is asked first: most often it fits, or nothing does.
  for (let asked = most; tooMany - enough > 1; asked = Math.floor((enough + tooMany) / 2)) {
    bars[design] = asked;
    if (fits(bars)) enough = asked;
    else tooMany = asked;
  }
  bars[design] = before;
  return enough;
}

const STEPS_FOR_A_WAY = 4;

/** Whole batches of some designs, then what room is left filled with one more; the least costly ways. */
function likelyWays({ day, left, alone, fits }: DayAsked, limit: number): number[][] {
  const candidates = left
    .map((bars, design) => ({ design, bars, extra: extraCosts(alone[design], day, bars) }))
    .filter(({ extra }) => extra.length > 1)
    .sort((a, b) => (b.extra[0] ?? 0) - (a.extra[0] ?? 0));
  const ways: { readonly bars: number[]; readonly extra: number }[] = [];
  const bars = left.map(() => 0);
  const idle = candidates.reduce((sum, { extra }) => sum + (extra[0] ?? 0), 0);
  let steps = limit * STEPS_FOR_A_WAY;
  const choose = (from: number, extra: number): void => {
    ways.push({ bars: [...bars], extra });
    for (let at = from; at < candidates.length && steps > 0; at += 1) {
      const candidate = candidates[at];
      if (candidate === undefined) continue;
      steps -= 1;
      const most = candidate.extra.length - 1;
      const made = largestFit(bars, candidate.design, most, fits);
      if (made === 0) continue;
      const { extra: costs } = candidate;
      for (const some of made < most ? [made] : amountsFor(candidate.bars, most)) {
        bars[candidate.design] = some;
        const more = (costs[some] ?? 0) - (costs[0] ?? 0);
        choose(at + 1, extra + more);
      }
      bars[candidate.design] = 0;
    }
  };
  choose(0, idle);
  return ways
    .sort((a, b) => a.extra - b.extra)
    .slice(0, limit)
    .map((way) => way.bars);
}

/** A full batch, or the odd remainder that leaves only full ones. */
function amountsFor(bars: number, most: number): number[] {
  const remainder = bars % most;
  return remainder === 0 ? [most] : [most, remainder];
}

/** By how much each number of bars on a day is dearer than the best way, as if the design were alone. */
function extraCosts(alone: Alone | undefined, day: number, bars: number): number[] {
  if (alone === undefined || bars === 0) return [];
  const least = alone.leastCost(day, bars);
  return Array.from(
    { length: alone.mostOf(day, bars) + 1 },
    (_, made) => alone.costWith(day, bars, made) - least,
  );
}

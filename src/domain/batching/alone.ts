import type { DesignNeeds } from './problem.ts';

/**
 * The least cost of one design as if it had every day for itself, worked back from the last day in the
 * manner of Wagner and Whitin (1958), with a most for each day. A batch that is made at all takes as
 * much as its day allows: what is made later waits less, and leaves less to make before. So from each
 * day there are two ways on, and few states are ever met.
 */
export class Alone {
  private readonly design: DesignNeeds;
  private readonly mostOn: readonly number[];
  private readonly unmet: number;
  private readonly known: Map<number, number>[];

  /** `mostOn`: the largest batch of each day; `unmet`: cost of a bar that finds no day. */
  constructor(design: DesignNeeds, mostOn: readonly number[], unmet: number) {
    this.design = design;
    this.mostOn = mostOn;
    this.unmet = unmet;
    this.known = design.needs.map(() => new Map<number, number>());
  }

  /** Least cost where `bars` are still to be made, on `day` or before, and then what earlier days need. */
  leastCost(day: number, bars: number): number {
    if (day < 0) return bars * this.unmet;
    const found = this.known[day]?.get(bars);
    if (found !== undefined) return found;
    let least = this.costWith(day, bars, 0);
    const most = this.mostOf(day, bars);
    if (most > 0) least = Math.min(least, this.costWith(day, bars, most));
    this.known[day]?.set(bars, least);
    return least;
  }

  /** The same where so many of them are made on that very day. */
  costWith(day: number, bars: number, made: number): number {
    const left = bars - made;
    return this.costOf(day, left, made) + this.leastCost(day - 1, left + this.needOn(day - 1));
  }

  /** What a day itself costs: its batch, and what is left for earlier days, which waits until it. */
  costOf(day: number, left: number, made: number): number {
    const batch = made > 0 ? (this.design.batchCost[day] ?? 0) : 0;
    return batch + left * this.design.waitCost;
  }

  mostOf(day: number, bars: number): number {
    return Math.min(bars, this.mostOn[day] ?? 0);
  }

  needOn(day: number): number {
    return this.design.needs[day] ?? 0;
  }
}

import type { Mold } from '../book/book.ts';
import type { Day } from '../kernel/day.ts';
import type { Capacity } from './capacity.ts';

type MoldFills = Iterable<readonly [Mold, number]>;

/** Sums of minutes may be off by this much. */
const ROUNDING = 1e-9;

/** What is already planned on each day, held against what a day allows. */
export class DayBook {
  private readonly capacity: Capacity;
  private readonly minutes = new Map<Day, number>();
  private readonly fills = new Map<Day, Map<Mold, number>>();

  constructor(capacity: Capacity) {
    this.capacity = capacity;
  }

  freeMinutes(day: Day): number {
    return this.capacity.minutes - (this.minutes.get(day) ?? 0);
  }

  freeFills(day: Day, mold: Mold): number {
    return this.capacity.fillsOf(mold) - (this.fills.get(day)?.get(mold) ?? 0);
  }

  hasRoom(day: Day, minutes: number, fills: MoldFills): boolean {
    if (minutes > this.freeMinutes(day) + ROUNDING) return false;
    for (const [mold, count] of fills) if (count > this.freeFills(day, mold)) return false;
    return true;
  }

  /** Whether a day with nothing on it has the sections for so many fills. */
  couldTake(fills: MoldFills): boolean {
    for (const [mold, count] of fills) if (count > this.capacity.fillsOf(mold)) return false;
    return true;
  }

  take(day: Day, minutes: number, fills: MoldFills): void {
    this.minutes.set(day, (this.minutes.get(day) ?? 0) + minutes);
    const taken = this.fills.get(day) ?? new Map<Mold, number>();
    for (const [mold, count] of fills) taken.set(mold, (taken.get(mold) ?? 0) + count);
    this.fills.set(day, taken);
  }
}

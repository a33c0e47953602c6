import type { Mold } from '../book/book.ts';
import type { Day } from '../kernel/day.ts';
import { type Capacity, daysInMold } from './capacity.ts';

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

  /** Fills that find a section on a day and on all days until they have set. */
  freeFills(day: Day, mold: Mold): number {
    let most = 0;
    for (let at = day; at < day + daysInMold(mold); at += 1)
      most = Math.max(most, this.fills.get(at)?.get(mold) ?? 0);
    return this.capacity.fillsOf(mold) - most;
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
    for (const [mold, count] of fills) {
      for (let at = day; at < day + daysInMold(mold); at += 1) {
        const taken = this.fills.get(at) ?? new Map<Mold, number>();
        taken.set(mold, (taken.get(mold) ?? 0) + count);
        this.fills.set(at, taken);
      }
    }
  }
}

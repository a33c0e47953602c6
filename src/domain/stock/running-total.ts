import type { Day } from '../kernel/day.ts';
import { type Exact } from '../kernel/exact.ts';
import { type Count, minus, Tally } from '../kernel/tally.ts';
import { firstAt } from './item-history.ts';

/** A sum that grows day by day; any day's is found without going through those before it. */
export class RunningTotal {
  private readonly days: Int32Array;
  /** In millionths; NaN for the few that are not whole in them. */
  private readonly millionths: Float64Array;
  private readonly others = new Map<number, Exact>();
  private readonly tally = new Tally();
  private length = 0;

  /** `room` is the most additions there will be: room made as they come would be thrown away again and again. */
  constructor(room: number) {
    this.days = new Int32Array(room);
    this.millionths = new Float64Array(room);
  }

  /** Adds a cell's number on the last whole day so far or a later one. */
  add(day: Day, quantity: number): void {
    this.tally.add(quantity);
    if (this.length === 0 || this.days[this.length - 1] !== day) this.length += 1;
    const last = this.length - 1;
    const { count } = this.tally;
    this.days[last] = day;
    this.millionths[last] = typeof count === 'number' ? count : NaN;
    if (typeof count !== 'number') this.others.set(last, count);
  }

  /** The sum at the end of a whole day; undefined before the first. */
  at(day: Day): Count | undefined {
    const count = this.countUntil(day);
    return count === 0 ? undefined : this.total(count - 1);
  }

  /** What was added on each day after `from` up to the end of `to`. */
  between(from: Day, to: Day): Count[] {
    const first = this.countUntil(from);
    return Array.from({ length: this.countUntil(to) - first }, (_, at) =>
      minus(this.total(first + at), this.total(first + at - 1)),
    );
  }

  private total(place: number): Count {
    return place < 0 ? 0 : (this.others.get(place) ?? (this.millionths[place] as number));
  }

  private countUntil(day: Day): number {
    return firstAt(this.length, (at) => (this.days[at] as Day) > day);
  }
}

import type { Day } from '../kernel/day.ts';
import { type Count, difference, Tally } from '../kernel/tally.ts';
import { firstAt, type ItemHistory } from './item-history.ts';

/** A sum that grows day by day; any day's is found without going through those before it. */
export class RunningTotal {
  private readonly days: Day[] = [];
  private readonly totals: Count[] = [];
  private readonly tally = new Tally();

  /** Adds a cell's number on the last day so far or a later one. */
  add(day: Day, quantity: number): void {
    this.tally.add(quantity);
    if (this.days.at(-1) !== day) this.days.push(day);
    this.totals[this.days.length - 1] = this.tally.count;
  }

  /** The sum at the end of a whole day; undefined before the first. */
  at(day: Day): Count | undefined {
    return this.totals[this.countUntil(day) - 1];
  }

  /** What was added on each day after `from` up to the end of `to`. */
  between(from: Day, to: Day): Count[] {
    const first = this.countUntil(from);
    return this.totals
      .slice(first, this.countUntil(to))
      .map((total, at) => difference(total, this.totals[first + at - 1] ?? 0));
  }

  private countUntil(day: Day): number {
    return firstAt(this.days.length, (at) => (this.days[at] ?? day) > day);
  }
}

/** What an item's moves come to by day. */
export interface DayTotals {
  /** On hand: lots received and all moves. */
  readonly stock: RunningTotal;
  /** Moves `used`, without those taken back. */
  readonly use: RunningTotal;
}

const known = new WeakMap<object, DayTotals>();

/** The totals of a history, summed once. */
export function dayTotals(history: ItemHistory): DayTotals {
  let totals = known.get(history.content);
  if (totals === undefined) {
    totals = { stock: stockByDay(history), use: useByDay(history) };
    known.set(history.content, totals);
  }
  return totals;
}

function stockByDay({ lots, ledger, inOrder }: ItemHistory): RunningTotal {
  const { whens, quantities } = ledger.columns;
  const total = new RunningTotal();
  let nextLot = 0;
  const receiveUntil = (day: Day): void => {
    for (let lot = lots[nextLot]; lot !== undefined; lot = lots[nextLot]) {
      if (Math.floor(lot.received) > day) return;
      total.add(Math.floor(lot.received), lot.quantity);
      nextLot += 1;
    }
  };
  for (const row of inOrder.all) {
    const day = Math.floor(whens[row] as Day);
    receiveUntil(day);
    total.add(day, quantities[row] as number);
  }
  receiveUntil(Infinity);
  return total;
}

function useByDay({ ledger, inOrder }: ItemHistory): RunningTotal {
  const { whens, quantities, reasons } = ledger.columns;
  const isUse = reasons.values.map((reason) => reason === 'used');
  const total = new RunningTotal();
  for (const row of inOrder.live) {
    if (isUse[reasons.places[row] as number] === true)
      total.add(Math.floor(whens[row] as Day), -(quantities[row] as number));
  }
  return total;
}

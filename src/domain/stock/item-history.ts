import type { Lot, Move } from '../book/book.ts';
import type { Ledger } from '../book/ledger.ts';
import type { Day } from '../kernel/day.ts';
import { compareNames } from '../kernel/names.ts';
import { live } from './reversals.ts';

/** Rows of the ledger in the order in which they count. */
interface OrderedRows {
  readonly all: Int32Array;
  /** Without those that were taken back. */
  readonly live: Int32Array;
  /** A cut before the end of this day may part a reversal from what it takes back. */
  readonly settledFrom: Day;
}

/** The lots of one stock item in order of receipt, and its moves. */
export class ItemHistory {
  readonly lots: readonly Lot[];
  readonly ledger: Ledger;
  /** The places of its moves in the ledger, in the order of the table. */
  readonly rows: Int32Array;
  /**
   * Stands for what happened to the item, in maps of what was worked out from it: a book in which
   * nothing else happened to it hands its `content` on.
   */
  content: object = {};
  private ordered: OrderedRows | undefined;

  constructor(ledger: Ledger, rows: Int32Array, lots: readonly Lot[]) {
    this.ledger = ledger;
    this.rows = rows;
    this.lots = lots;
  }

  /** All moves, in the order of the table. */
  get moves(): readonly Move[] {
    return this.movesOf(this.rows);
  }

  /** Rows of all moves and of the live ones, in the order in which they count. */
  get inOrder(): OrderedRows {
    this.ordered ??= orderedRows(this.ledger, this.rows);
    return this.ordered;
  }

  /** Whether another history has the same moves in the same order of the table, line for line. */
  hasSameMoves({ rows, ledger: { prints } }: ItemHistory): boolean {
    const own = this.ledger.prints;
    return (
      rows.length === this.rows.length &&
      rows.every((row, at) => {
        const ownRow = this.rows[at] as number;
        return prints.high[row] === own.high[ownRow] && prints.low[row] === own.low[ownRow];
      })
    );
  }

  /** The history as it stood at the end of a day, or all of it where its later moves take nothing back. */
  asKnownOn(day: Day): ItemHistory {
    const until = Math.floor(day) + 1;
    if (until > this.inOrder.settledFrom) return this;
    const { whens } = this.ledger.columns;
    const rows = this.rows.filter((row) => (whens[row] as Day) < until);
    return new ItemHistory(this.ledger, rows, this.lots);
  }

  /** Rows of the moves up to the end of a day that were not taken back by then, in the order in which they count. */
  liveRows(day: Day): Int32Array {
    const { live: rows } = this.asKnownOn(day).inOrder;
    const { whens } = this.ledger.columns;
    const until = Math.floor(day) + 1;
    return rows.subarray(
      0,
      firstAt(rows.length, (at) => (whens[rows[at] as number] as Day) >= until),
    );
  }

  movesOf(rows: Int32Array): Move[] {
    return Array.from(rows, (row) => this.ledger.move(row));
  }
}

/** Works something out of a history once, and keeps it for all histories in which the same happened. */
export function oncePerContent<A>(work: (history: ItemHistory) => A): (history: ItemHistory) => A {
  const known = new WeakMap<object, { readonly answer: A }>();
  return (history) => {
    let found = known.get(history.content);
    if (found === undefined) {
      found = { answer: work(history) };
      known.set(history.content, found);
    }
    return found.answer;
  };
}

function orderedRows(ledger: Ledger, rows: Int32Array): OrderedRows {
  const { whens, reasons } = ledger.columns;
  const all = sorted(ledger, rows);
  const takesBack = reasons.values.map((reason) => reason === 'reversed');
  if (!all.some((row) => takesBack[reasons.places[row] as number]))
    return { all, live: all, settledFrom: -Infinity };
  const moves = Array.from(all, (row) => ledger.move(row));
  const kept = new Set(live(moves));
  const isSettled = (move: Move): boolean => kept.has(move) && move.reason !== 'reversed';
  return {
    all,
    live: all.filter((_, at) => kept.has(moves[at] as Move)),
    settledFrom: moves.reduce(
      (latest, move, at) =>
        isSettled(move) ? latest : Math.max(latest, whens[all[at] as number] as Day),
      -Infinity,
    ),
  };
}

/** Most ledgers are written in order of time, so a look along the rows comes before sorting them. */
function sorted({ columns }: Ledger, rows: Int32Array): Int32Array {
  const { whens, quantities, entries } = columns;
  const byCount = (a: number, b: number): number => {
    const [whenA, whenB] = [whens[a] as Day, whens[b] as Day];
    return (
      Math.floor(whenA) - Math.floor(whenB) ||
      // Within a day what comes in counts first, so that a bar made and sold that day has a cost.
      Math.sign(quantities[b] as number) - Math.sign(quantities[a] as number) ||
      whenA - whenB ||
      compareNames(entries[a] ?? '', entries[b] ?? '')
    );
  };
  for (let at = 1; at < rows.length; at += 1) {
    if (byCount(rows[at - 1] as number, rows[at] as number) > 0) return rows.slice().sort(byCount);
  }
  return rows;
}

/** The first of `length` places for which `isThere` holds; it holds for all after that one too. */
export function firstAt(length: number, isThere: (at: number) => boolean): number {
  let [low, high] = [0, length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (isThere(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}

import type { Day } from '../kernel/day.ts';
import { nameKey } from '../kernel/names.ts';
import { oncePer } from '../kernel/once-per.ts';
import type { Item, Move } from './book.ts';
import type { MoveReason } from './words.ts';

/** A column in which few different things stand many times: each is kept once, with its places. */
export interface Repeated<T> {
  readonly values: readonly T[];
  /** For each move the place of its value in `values`. */
  readonly places: Int32Array;
}

/** The columns of Moves, one place for each move, in the order of the table. */
export interface MoveColumns {
  readonly entries: readonly string[];
  readonly whens: Float64Array;
  readonly reasons: Repeated<MoveReason>;
  readonly items: Repeated<Item>;
  readonly quantities: Float64Array;
  readonly lots: Repeated<string>;
  /** NaN where the cell is blank. */
  readonly values: Float64Array;
  readonly batches: Repeated<string>;
  readonly bys: Repeated<string>;
  readonly notes: Repeated<string>;
}

/** Two numbers for each move that stand for all that its line says. */
export interface MovePrints {
  readonly high: Int32Array;
  readonly low: Int32Array;
}

/**
 * The moves of a book, in columns: a ledger of years is read and summed several times faster without
 * an object for each line. Who asks about few moves, or doesn't mind the wait, gets them as objects.
 */
export class Ledger {
  readonly columns: MoveColumns;
  readonly prints: MovePrints;
  private made: readonly Move[] | undefined;

  constructor(columns: MoveColumns, prints: MovePrints) {
    this.columns = columns;
    this.prints = prints;
  }

  get length(): number {
    return this.columns.entries.length;
  }

  /** All moves, in the order of the table. */
  get moves(): readonly Move[] {
    this.made ??= Array.from({ length: this.length }, (_, row) => this.move(row));
    return this.made;
  }

  /** The move in a row; 0 is the first. */
  move(row: number): Move {
    if (this.made !== undefined) return this.made[row] as Move;
    const { columns } = this;
    const value = columns.values[row];
    return {
      entry: columns.entries[row] ?? '',
      when: columns.whens[row] as Day,
      reason: valueIn(columns.reasons, row),
      item: valueIn(columns.items, row),
      quantity: columns.quantities[row] as number,
      lot: valueIn(columns.lots, row),
      value: Number.isNaN(value) ? undefined : value,
      batch: valueIn(columns.batches, row),
      by: valueIn(columns.bys, row),
      note: valueIn(columns.notes, row),
    };
  }
}

/** A ledger of some of another's moves, told by their rows. */
export function someMoves(ledger: Ledger, isKept: (row: number) => boolean): Ledger {
  const { columns } = ledger;
  const kept = Int32Array.from(columns.entries.keys()).filter(isKept);
  const some = <T>({ values, places }: Repeated<T>): Repeated<T> => ({
    values,
    places: kept.map((row) => places[row] as number),
  });
  const numbers = (column: Float64Array): Float64Array =>
    Float64Array.from(kept, (row) => column[row] as number);
  return new Ledger(
    {
      entries: Array.from(kept, (row) => columns.entries[row] as string),
      whens: numbers(columns.whens),
      reasons: some(columns.reasons),
      items: some(columns.items),
      quantities: numbers(columns.quantities),
      lots: some(columns.lots),
      values: numbers(columns.values),
      batches: some(columns.batches),
      bys: some(columns.bys),
      notes: some(columns.notes),
    },
    {
      high: kept.map((row) => ledger.prints.high[row] as number),
      low: kept.map((row) => ledger.prints.low[row] as number),
    },
  );
}

/** The value of a column in a row that the ledger has. */
export const valueIn = <T>({ values, places }: Repeated<T>, row: number): T =>
  values[places[row] as number] as T;

/** The `nameKey` of each of a column's `values`. */
export const nameKeysIn = oncePer((values: readonly string[]) => values.map(nameKey));

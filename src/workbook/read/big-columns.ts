import type { Repeated } from '../../domain/book/ledger.ts';
import { type Column, readCell, Trouble } from '../column.ts';
import { type Fingerprint, RowPrints } from './fingerprint.ts';

type HostRow = readonly unknown[];

/** Where a column stands in its rows, how its cells are read, and where its fingerprint is added. */
export interface ColumnPlace {
  readonly column: Column<unknown>;
  /** Undefined where the table has no such column. */
  readonly at: number | undefined;
  readonly print: Fingerprint;
  readonly prints: RowPrints;
}

/** A column that is read some rows at a time; what can't be read is noticed, and said elsewhere. */
abstract class BigColumn {
  protected readonly place: ColumnPlace;
  /** Whether all cells read so far could be. */
  sound = true;

  constructor(place: ColumnPlace) {
    this.place = place;
  }

  abstract read(rows: readonly HostRow[], from: number, to: number): void;

  /** What a cell says; undefined where it is blank or can't be read. */
  protected valueOf(cell: unknown): unknown {
    const value = readCell(this.place.column, cell);
    if (!(value instanceof Trouble)) return value;
    this.sound = false;
    return undefined;
  }
}

/** Numbers or days; NaN where a cell is blank. */
export class NumberColumn extends BigColumn {
  readonly numbers: Float64Array;

  constructor(place: ColumnPlace, rows: number) {
    super(place);
    this.numbers = new Float64Array(rows).fill(NaN);
  }

  read(rows: readonly HostRow[], from: number, to: number): void {
    const { at, print, prints } = this.place;
    if (at === undefined) return;
    for (let row = from; row < to; row += 1) {
      const cell = rows[row]?.[at];
      const value = this.valueOf(cell);
      if (typeof value !== 'number') continue;
      this.numbers[row] = value;
      prints.addCell(row, print, cell);
    }
  }
}

/** Texts of which nearly every row has its own; "" where a cell is blank. */
export class TextColumn extends BigColumn {
  readonly texts: string[];

  constructor(place: ColumnPlace, rows: number) {
    super(place);
    this.texts = new Array<string>(rows).fill('');
  }

  read(rows: readonly HostRow[], from: number, to: number): void {
    const { at, print, prints } = this.place;
    for (let row = from; row < to; row += 1) {
      const cell = at === undefined ? undefined : rows[row]?.[at];
      const value = this.valueOf(cell);
      if (typeof value === 'string') this.texts[row] = value;
      prints.addCell(row, print, cell);
    }
  }
}

/** Few different texts that stand many times: each is read once. "" where a cell is blank. */
export class RepeatedColumn<T extends string> extends BigColumn implements Repeated<T> {
  readonly values: T[] = [];
  readonly places: Int32Array;
  private readonly seen = new Map<unknown, number>();
  private readonly prints: RowPrints;

  constructor(place: ColumnPlace, rows: number) {
    super(place);
    this.places = new Int32Array(rows);
    this.prints = new RowPrints(0);
    if (place.at === undefined && rows > 0) this.add(undefined);
  }

  read(rows: readonly HostRow[], from: number, to: number): void {
    const { at, prints } = this.place;
    if (at === undefined) return;
    let place = -1;
    let above: unknown;
    for (let row = from; row < to; row += 1) {
      const cell = rows[row]?.[at];
      // Many cells hold what the one above them does.
      if (place < 0 || cell !== above) place = this.seen.get(cell) ?? this.add(cell);
      above = cell;
      this.places[row] = place;
      prints.addPrint(row, this.prints, place);
    }
  }

  private add(cell: unknown): number {
    const place = this.values.length;
    this.seen.set(cell, place);
    this.values.push((this.valueOf(cell) ?? '') as T);
    this.prints.makeRoomFor(place);
    this.prints.addCell(place, this.place.print, cell);
    return place;
  }
}

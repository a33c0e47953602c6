import type { Repeated } from '../../domain/book/ledger.ts';
import { type Column, isPlainText, readCell, Trouble } from '../column.ts';
import { type Fingerprint, RowPrints } from './fingerprint.ts';
import { hashOfName } from './unique.ts';

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

  /** Reads the cells of some rows, of which the first is to stand in row `start`. */
  abstract read(rows: readonly HostRow[], start: number): void;

  /** Keeps so many rows, where room was made for more. */
  abstract cut(rows: number): void;

  /** What a cell says; undefined where it is blank or can't be read. */
  protected valueOf(cell: unknown): unknown {
    const value = readCell(this.place.column, cell);
    if (!(value instanceof Trouble)) return value;
    this.sound = false;
    return undefined;
  }
}

/** Of a column that doesn't say what it takes as it stands, every cell is read. */
const NOTHING = { least: Infinity, most: -Infinity };

/** Numbers or days; NaN where a cell is blank. */
export class NumberColumn extends BigColumn {
  numbers: Float64Array;

  constructor(place: ColumnPlace, rows: number) {
    super(place);
    this.numbers = new Float64Array(rows);
  }

  read(rows: readonly HostRow[], start: number): void {
    const { column, at, print, prints } = this.place;
    const { least, most } = column.plain ?? NOTHING;
    const { numbers } = this;
    for (let i = 0; i < rows.length; i += 1) {
      const cell = at === undefined ? undefined : rows[i]?.[at];
      if (typeof cell === 'number' && cell >= least && cell <= most) {
        numbers[start + i] = cell;
        prints.addNumber(start + i, print, cell);
      } else this.readOther(start + i, cell);
    }
  }

  cut(rows: number): void {
    this.numbers = this.numbers.subarray(0, rows);
  }

  private readOther(row: number, cell: unknown): void {
    const value = this.valueOf(cell);
    this.numbers[row] = typeof value === 'number' ? value : NaN;
    if (typeof value === 'number') this.place.prints.addCell(row, this.place.print, cell);
  }
}

/** Texts of which nearly every row has its own; "" where a cell is blank. */
export class TextColumn extends BigColumn {
  readonly texts: string[];
  /** `hashOfName` of each, taken while the text is at hand. */
  hashes: Int32Array;

  constructor(place: ColumnPlace, rows: number) {
    super(place);
    this.texts = new Array<string>(rows);
    this.hashes = new Int32Array(rows);
  }

  read(rows: readonly HostRow[], start: number): void {
    const { column, at, print, prints } = this.place;
    const plain = column.plain ?? NOTHING;
    const { texts, hashes } = this;
    for (let i = 0; i < rows.length; i += 1) {
      const cell = at === undefined ? undefined : rows[i]?.[at];
      const text = isPlainText(cell, plain) ? cell : this.textOf(cell);
      texts[start + i] = text;
      hashes[start + i] = hashOfName(text);
      prints.addCell(start + i, print, cell);
    }
  }

  cut(rows: number): void {
    this.texts.length = rows;
    this.hashes = this.hashes.subarray(0, rows);
  }

  private textOf(cell: unknown): string {
    const value = this.valueOf(cell);
    return typeof value === 'string' ? value : '';
  }
}

/** Few different texts that stand many times: each is read once. "" where a cell is blank. */
export class RepeatedColumn<T extends string> extends BigColumn implements Repeated<T> {
  readonly values: T[] = [];
  places: Int32Array;
  /** The cell that each value was read from. */
  private readonly cells: unknown[] = [];
  private readonly placeOf = new Map<unknown, number>();
  /** What last stood below each value: the same lines follow each other again and again. */
  private readonly below: number[] = [];
  private readonly prints: RowPrints;
  /** Of the row read last; none so far. */
  private lastPlace = -1;

  constructor(place: ColumnPlace, rows: number) {
    super(place);
    this.places = new Int32Array(rows);
    this.prints = new RowPrints(0);
    if (place.at === undefined && rows > 0) this.add(undefined);
  }

  read(rows: readonly HostRow[], start: number): void {
    const { at, prints } = this.place;
    if (at === undefined || rows.length === 0) return;
    const { places, cells, below } = this;
    let place = this.lastPlace < 0 ? this.find(rows[0]?.[at]) : this.lastPlace;
    for (let i = 0; i < rows.length; i += 1) {
      const cell = rows[i]?.[at];
      const guess = below[place] as number;
      if (cells[guess] === cell) place = guess;
      else {
        const found = this.find(cell);
        below[place] = found;
        place = found;
      }
      places[start + i] = place;
      prints.addPrint(start + i, this.prints, place);
    }
    this.lastPlace = place;
  }

  cut(rows: number): void {
    this.places = this.places.subarray(0, rows);
  }

  private find(cell: unknown): number {
    return this.placeOf.get(cell) ?? this.add(cell);
  }

  private add(cell: unknown): number {
    const place = this.values.length;
    this.placeOf.set(cell, place);
    this.cells.push(cell);
    this.below.push(place);
    this.values.push((this.valueOf(cell) ?? '') as T);
    this.prints.makeRoomFor(place);
    this.prints.addCell(place, this.place.print, cell);
    return place;
  }
}

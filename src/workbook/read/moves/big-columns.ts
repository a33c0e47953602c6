import type { Repeated } from '../../../domain/book/ledger.ts';
import { type Column, isBlankIn, isPlainText, readCell, Trouble } from '../../column.ts';
import { type Fingerprint, RowPrints } from '../fingerprint.ts';
import { hashOfName } from '../unique.ts';

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
export abstract class BigColumn {
  protected readonly place: ColumnPlace;
  /** Whether all cells read so far could be. */
  sound = true;
  /** Whether what was read tells which cell it was read from. */
  protected isAsTyped = true;

  constructor(place: ColumnPlace) {
    this.place = place;
  }

  /** Reads the cells of some rows, of which the first is to stand in row `start`. */
  abstract read(rows: readonly HostRow[], start: number): void;

  /** Keeps so many rows, where room was made for more. */
  abstract cut(rows: number): void;

  /** Marks the rows whose cells, now in column `at`, are not those that were read in their place. */
  abstract compare(rows: readonly HostRow[], start: number, at: number, differs: Uint8Array): void;

  /** Begins with what another column of the same kind has read. */
  abstract takeOver(other: this): void;

  /** Whether its cells can be compared where the table has the column in place `at`, or has none. */
  canCompare(at: number | undefined): boolean {
    return this.isAsTyped && (at === undefined) === (this.place.at === undefined);
  }

  /** Adds a cell to the fingerprint of a row. */
  protected addPrint(row: number, cell: unknown, prints = this.place.prints): void {
    const { column, print } = this.place;
    if (!isBlankIn(column, cell)) prints.addCell(row, print, cell);
  }

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
    const takesZero = column.zero === 'meant';
    const { numbers } = this;
    for (let i = 0; i < rows.length; i += 1) {
      const cell = at === undefined ? undefined : rows[i]?.[at];
      if (typeof cell === 'number' && cell >= least && cell <= most && (cell !== 0 || takesZero)) {
        numbers[start + i] = cell;
        prints.addNumber(start + i, print, cell);
      } else this.readOther(start + i, cell);
    }
  }

  cut(rows: number): void {
    this.numbers = this.numbers.subarray(0, rows);
  }

  compare(rows: readonly HostRow[], start: number, at: number, differs: Uint8Array): void {
    const { numbers } = this;
    const { column } = this.place;
    for (let i = 0; i < rows.length; i += 1) {
      const cell = rows[i]?.[at];
      const number = numbers[start + i] as number;
      if (cell !== number && !(Number.isNaN(number) && isBlankIn(column, cell))) differs[i] = 1;
    }
  }

  takeOver(other: NumberColumn): void {
    this.numbers.set(other.numbers);
  }

  private readOther(row: number, cell: unknown): void {
    const value = this.valueOf(cell);
    this.numbers[row] = typeof value === 'number' ? value : NaN;
    if (typeof value === 'number') this.isAsTyped &&= value === cell;
    this.addPrint(row, cell);
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
    const { column, at } = this.place;
    const plain = column.plain ?? NOTHING;
    const { texts, hashes } = this;
    for (let i = 0; i < rows.length; i += 1) {
      const cell = at === undefined ? undefined : rows[i]?.[at];
      const text = isPlainText(cell, plain) ? cell : this.textOf(cell);
      texts[start + i] = text;
      hashes[start + i] = hashOfName(text);
      this.addPrint(start + i, cell);
    }
  }

  cut(rows: number): void {
    this.texts.length = rows;
    this.hashes = this.hashes.subarray(0, rows);
  }

  compare(rows: readonly HostRow[], start: number, at: number, differs: Uint8Array): void {
    const { texts } = this;
    for (let i = 0; i < rows.length; i += 1) if (rows[i]?.[at] !== texts[start + i]) differs[i] = 1;
  }

  takeOver({ texts, hashes }: TextColumn): void {
    for (let row = 0; row < texts.length; row += 1) this.texts[row] = texts[row] as string;
    this.hashes.set(hashes);
  }

  private textOf(cell: unknown): string {
    const value = this.valueOf(cell);
    const text = typeof value === 'string' ? value : '';
    this.isAsTyped &&= text === cell;
    return text;
  }
}

/** Few different texts that stand many times: each is read once. "" where a cell is blank. */
export class RepeatedColumn<T extends string> extends BigColumn implements Repeated<T> {
  values: T[] = [];
  places: Int32Array;
  /** The cell that each value was read from. */
  private cells: unknown[] = [];
  private placeOf = new Map<unknown, number>();
  /** What last stood below each value: the same lines follow each other again and again. */
  private below: number[] = [];
  private prints: RowPrints;
  /** Whether another column has the same values, and not a copy of them. */
  private isShared = false;
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
    const { places } = this;
    let place = this.lastPlace < 0 ? this.find(rows[0]?.[at]) : this.lastPlace;
    for (let i = 0; i < rows.length; i += 1) {
      const cell = rows[i]?.[at];
      const guess = this.below[place] as number;
      if (this.cells[guess] === cell) place = guess;
      else {
        const found = this.find(cell);
        this.below[place] = found;
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

  compare(rows: readonly HostRow[], start: number, at: number, differs: Uint8Array): void {
    const { places, cells } = this;
    for (let i = 0; i < rows.length; i += 1)
      if (rows[i]?.[at] !== cells[places[start + i] as number]) differs[i] = 1;
  }

  takeOver(other: RepeatedColumn<T>): void {
    this.values = other.values;
    this.cells = other.cells;
    this.placeOf = other.placeOf;
    this.below = other.below;
    this.prints = other.prints;
    this.isShared = true;
    this.places.set(other.places);
    this.lastPlace = other.lastPlace;
  }

  /** Most edits bring no new value, so what is known of them is copied for the first that does. */
  private standAlone(): void {
    this.values = [...this.values];
    this.cells = [...this.cells];
    this.placeOf = new Map(this.placeOf);
    this.below = [...this.below];
    this.prints = this.prints.copy(this.prints.high.length);
    this.isShared = false;
  }

  private find(cell: unknown): number {
    return this.placeOf.get(cell) ?? this.add(cell);
  }

  private add(cell: unknown): number {
    if (this.isShared) this.standAlone();
    const place = this.values.length;
    this.placeOf.set(cell, place);
    this.cells.push(cell);
    this.below.push(place);
    this.values.push((this.valueOf(cell) ?? '') as T);
    this.prints.makeRoomFor(place);
    this.addPrint(place, cell, this.prints);
    return place;
  }
}

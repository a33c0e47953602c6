import type { Cell } from '../../../../src/workbook/port.ts';
import { asTyped, type Kept, shown } from './cells.ts';
import { HostFault } from './host-fault.ts';

/** Cells of a sheet, by place; kept in step when cells are put in or taken out above it. */
export interface Place {
  row: number;
  column: number;
  height: number;
  width: number;
}

/** As many rows as Excel has. */
const LAST_ROW = 1_048_576;

const below = (place: Place): number => place.row + place.height;

/** One sheet: a grid of cells, and the places on it that follow their cells. */
export class Sheet {
  readonly name: string;
  protected = false;
  readonly #cells: Kept[][] = [];
  /** Whether a followed place must never be torn apart, as a table. */
  readonly #followed = new Map<Place, boolean>();

  constructor(name: string) {
    this.name = name;
  }

  /** Keeps a place in step with its cells from now on. */
  follow(place: Place, isTable = false): void {
    this.#followed.set(place, isTable);
  }

  leave(place: Place): void {
    this.#followed.delete(place);
  }

  at(row: number, column: number): Kept | undefined {
    return this.#cells[row]?.[column];
  }

  values(place: Place): Cell[][] {
    return this.#cellsIn(place).map((row) => row.map(shown));
  }

  /** The formulas; of a cell without one, its value. */
  formulas(place: Place): Cell[][] {
    return this.#cellsIn(place).map((row) =>
      row.map((kept) => (typeof kept === 'object' ? kept.formula : shown(kept))),
    );
  }

  /** Puts one cell in as it is, with no reading of its text. */
  put(row: number, column: number, kept: Kept): void {
    (this.#cells[row] ??= [])[column] = kept;
  }

  /** Writes a block of the place's own shape; null leaves a cell alone. */
  write(place: Place, values: readonly (readonly (Cell | null)[])[]): void {
    if (values.length !== place.height || values.some((row) => row.length !== place.width)) {
      throw new HostFault('InvalidArgument');
    }
    values.forEach((row, down) =>
      row.forEach((cell, across) => {
        if (cell !== null) this.put(place.row + down, place.column + across, asTyped(cell));
      }),
    );
  }

  /** Moves what stands below down within these columns, to make room at the place. */
  insert(room: Place): void {
    const end = Math.max(this.#cells.length, room.row);
    if (end + room.height > LAST_ROW) throw new HostFault('NonBlankCellOffSheet');
    this.#refuseTorn(room);
    for (let row = end - 1; row >= room.row; row -= 1) this.#move(row, row + room.height, room);
    for (const place of this.#followed.keys()) {
      if (!within(place, room)) continue;
      if (place.row >= room.row) place.row += room.height;
      else if (below(place) > room.row) place.height += room.height;
    }
  }

  /** Takes the place's cells out, and moves up what stands below. */
  remove(gone: Place): void {
    const { row: first, height } = gone;
    this.#refuseTorn(gone);
    const end = Math.max(this.#cells.length, below(gone));
    for (let row = first; row < end; row += 1) this.#move(row + height, row, gone);
    for (const place of this.#followed.keys()) {
      if (!within(place, gone)) continue;
      const cut = Math.max(0, Math.min(below(place), first + height) - Math.max(place.row, first));
      place.row -= Math.max(0, Math.min(place.row - first, height));
      place.height -= cut;
    }
  }

  /** Takes a column's cells out of these rows, and moves the columns behind it one to the left. */
  removeColumn(rows: Place, column: number): void {
    const end = rows.column + rows.width;
    for (const row of this.#rows(rows)) {
      for (let across = column; across < end; across += 1) {
        this.put(row, across, across + 1 < end ? (this.at(row, across + 1) ?? '') : '');
      }
    }
    for (const place of this.#followed.keys()) {
      const touches = place.row < below(rows) && rows.row < below(place);
      if (!touches || column >= place.column + place.width) continue;
      if (place.column > column) place.column -= 1;
      else place.width -= 1;
    }
  }

  #cellsIn(place: Place): (Kept | undefined)[][] {
    return this.#rows(place).map((row) =>
      Array.from({ length: place.width }, (_, across) => this.at(row, place.column + across)),
    );
  }

  #rows({ row, height }: Place): number[] {
    return Array.from({ length: height }, (_, down) => row + down);
  }

  #move(from: number, to: number, { column, width }: Place): void {
    for (let across = column; across < column + width; across += 1) {
      this.put(to, across, this.at(from, across) ?? '');
    }
  }

  /** Excel does not tear a table apart: what stands below must lie within the columns that move. */
  #refuseTorn(moved: Place): void {
    for (const [place, isTable] of this.#followed) {
      const touches =
        place.column < moved.column + moved.width && moved.column < place.column + place.width;
      if (isTable && touches && place.row > moved.row && !within(place, moved)) {
        throw new HostFault('InsertDeleteConflict');
      }
    }
  }
}

const within = (place: Place, moved: Place): boolean =>
  place.column >= moved.column && place.column + place.width <= moved.column + moved.width;

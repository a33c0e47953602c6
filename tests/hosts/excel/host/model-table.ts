import type { Cell } from '../../../../src/workbook/port.ts';
import { HostFault } from './host-fault.ts';
import type { Place, Sheet } from './sheet.ts';
import type { ChangeEvent, WorkbookModel } from './workbook-model.ts';

/** A table: a place on a sheet, its header row first if it shows one. */
export class ModelTable {
  readonly id: string;
  name: string;
  readonly sheet: Sheet;
  readonly showHeaders: boolean;
  readonly place: Place;
  /** A filter hides some of its rows. */
  filtered = false;
  /** By header: what the table itself writes into a new row's cell that is left alone. */
  calculated: Readonly<Record<string, Cell>> = {};
  readonly #model: WorkbookModel;

  constructor(
    model: WorkbookModel,
    id: string,
    name: string,
    sheet: Sheet,
    headers: readonly string[],
    { row, showHeaders }: { readonly row: number; readonly showHeaders: boolean },
  ) {
    this.#model = model;
    this.id = id;
    this.name = name;
    this.sheet = sheet;
    this.showHeaders = showHeaders;
    this.place = { row, column: 0, height: 1, width: headers.length };
    headers.forEach((header, column) => sheet.put(row, column, header));
    sheet.follow(this.place, true);
  }

  /** Puts rows in as they are, when the table is made. */
  lay(rows: readonly (readonly Cell[])[]): void {
    const first = this.place.row + this.place.height;
    rows.forEach((row, down) =>
      row.forEach((cell, column) => this.sheet.put(first + down, this.place.column + column, cell)),
    );
    this.place.height += rows.length;
  }

  get headers(): string[] {
    return (this.sheet.values({ ...this.place, height: 1 })[0] ?? []).map(String);
  }

  get body(): Place {
    return { ...this.place, row: this.place.row + 1, height: this.place.height - 1 };
  }

  get rows(): Cell[][] {
    return this.sheet.values(this.body);
  }

  /** Grows at its end: what stands below moves down. */
  addRows(values: readonly (readonly (Cell | null)[])[], source: ChangeEvent['source']): void {
    this.#open();
    if (values.some((row) => row.length !== this.place.width)) {
      throw new HostFault('InvalidArgument');
    }
    const { row, column, height, width } = this.place;
    const room = { row: row + height, column, height: values.length, width };
    this.sheet.insert(room);
    this.place.height += values.length;
    const { headers } = this;
    this.sheet.write(
      room,
      values.map((cells) =>
        cells.map((cell, across) => cell ?? this.calculated[headers[across] ?? ''] ?? ''),
      ),
    );
    this.#changed('RowInserted', source);
  }

  /** Puts a row in at a place of the body, as a person does by hand. */
  insertRow(at: number, values: readonly Cell[], source: ChangeEvent['source'] = 'Remote'): void {
    this.#open();
    const room = { ...this.body, row: this.body.row + at, height: 1 };
    const isLast = at === this.body.height;
    this.sheet.insert(room);
    if (isLast) this.place.height += 1;
    this.sheet.write(room, [values]);
    this.#changed('RowInserted', source);
  }

  deleteRows(at: number, count: number, source: ChangeEvent['source'] = 'Local'): void {
    this.#open();
    if (at < 0 || at + count > this.body.height) throw new HostFault('InvalidArgument');
    this.sheet.remove({ ...this.body, row: this.body.row + at, height: count });
    this.#changed('RowDeleted', source);
  }

  setCell(row: number, column: number, cell: Cell, source: ChangeEvent['source'] = 'Remote'): void {
    this.write(
      { row: this.body.row + row, column: this.place.column + column, height: 1, width: 1 },
      [[cell]],
      source,
    );
  }

  /** Writes cells of the table, or its headers. */
  write(
    place: Place,
    values: readonly (readonly (Cell | null)[])[],
    source: ChangeEvent['source'] = 'Local',
  ): void {
    this.#open();
    this.sheet.write(place, values);
    this.#changed('RangeEdited', source);
  }

  /** Takes a column out, as a person does. */
  deleteColumn(header: string): void {
    this.sheet.removeColumn({ ...this.place }, this.place.column + this.headers.indexOf(header));
  }

  /** Moves the last column to the front, as a person does. */
  turnColumns(): void {
    const all = { ...this.place };
    const rows = this.sheet.values(all).map((row) => [...row.slice(-1), ...row.slice(0, -1)]);
    rows.forEach((row, down) =>
      row.forEach((cell, across) => this.sheet.put(all.row + down, all.column + across, cell)),
    );
  }

  /** Sorts the last row to the front, as a person does: cells move, and what follows them stays. */
  turnRows(): void {
    const { rows } = this;
    this.sheet.write(this.body, [...rows.slice(-1), ...rows.slice(0, -1)]);
  }

  #open(): void {
    this.#model.open(this.sheet);
    if (this.filtered) throw new HostFault('FilteredRangeConflict');
  }

  #changed(changeType: ChangeEvent['changeType'], source: ChangeEvent['source']): void {
    this.#model.calculation.tableChanged(this.name);
    this.#model.tell({ changeType, source, tableId: this.id });
  }
}

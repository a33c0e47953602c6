import type { Cell } from '../../../../src/workbook/port.ts';
import { Loaded, type Queue } from './loaded.ts';
import { HostFault } from './workbook-model.ts';

/** Part of a table; row -1 is its header row, and an infinite size means as far as the table goes. */
export class FakeRange {
  readonly #context: Queue;
  readonly #table: string;
  readonly #row: number;
  readonly #column: number;
  readonly #height: number;
  readonly #width: number;
  readonly #loaded = new Loaded();

  constructor(
    context: Queue,
    table: string,
    row: number,
    column: number,
    height: number,
    width: number,
  ) {
    this.#context = context;
    this.#table = table;
    this.#row = row;
    this.#column = column;
    this.#height = height;
    this.#width = width;
  }

  load(paths: string): this {
    if (paths !== 'values') throw new HostFault('InvalidArgument');
    this.#context.queue(() => this.#loaded.set('values', this.#read()));
    return this;
  }

  get values(): Cell[][] {
    return this.#loaded.get('values');
  }

  set values(cells: Cell[][]) {
    this.#context.queue(() =>
      cells.forEach((row, down) =>
        row.forEach((cell, across) =>
          this.#context.model.setCell(this.#table, this.#row + down, this.#column + across, cell),
        ),
      ),
    );
  }

  getCell(row: number, column: number): FakeRange {
    const [down, across] = [this.#row + row, this.#column + column];
    return new FakeRange(this.#context, this.#table, down, across, 1, 1);
  }

  getResizedRange(deltaRows: number, deltaColumns: number): FakeRange {
    return new FakeRange(
      this.#context,
      this.#table,
      this.#row,
      this.#column,
      this.#height + deltaRows,
      this.#width + deltaColumns,
    );
  }

  #read(): Cell[][] {
    const { headers, rows } = this.#context.model.table(this.#table);
    const lines = this.#row < 0 ? [headers] : rows.slice(this.#row, this.#row + this.#height);
    if (Number.isFinite(this.#height) && lines.length < this.#height) {
      throw new HostFault('InvalidArgument');
    }
    return lines.map((line) =>
      line
        .slice(this.#column, this.#column + this.#width)
        .map((cell) => (typeof cell === 'object' ? '#NAME?' : cell)),
    );
  }
}

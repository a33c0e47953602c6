import type { MoveColumns, Repeated } from '../../domain/book/ledger.ts';
import type { MoveReason } from '../../domain/book/words.ts';
import { isBlank, Trouble } from '../column.ts';
import type { Cell } from '../port.ts';
import { tables } from '../schema.ts';
import { columnPrint, type Fingerprint, RowPrints } from './fingerprint.ts';
import type { RecognisedTable } from './recognise.ts';
import { hasRepeats } from './unique.ts';

/** The cells of Moves in columns, before its names are looked up. */
export interface MoveCells extends Omit<MoveColumns, 'items'> {
  readonly materials: Repeated<string>;
  readonly print: Fingerprint;
  /** Whether each cell could be read, no Entry stands twice and each sign suits its reason. */
  readonly sound: boolean;
}

/**
 * Reads Moves column by column, in one go with its fingerprint. This is what BOOK spends its time on:
 * no object is made for a row, a text that stands many times is read once, and what is wrong is only
 * noticed here. `explainMoves` says it in words.
 */
export function readMoveCells(table: RecognisedTable | undefined): MoveCells {
  const cells = new MoveCellReader(table ?? NO_MOVES);
  const columns = {
    entries: cells.texts('entry'),
    whens: cells.numbers('when'),
    reasons: cells.repeated<MoveReason>('reason'),
    materials: cells.repeated<string>('material'),
    quantities: cells.numbers('quantity'),
    lots: cells.repeated<string>('lot'),
    values: cells.numbers('value'),
    batches: cells.repeated<string>('batch'),
    bys: cells.repeated<string>('by'),
    notes: cells.repeated<string>('note'),
  };
  const sound = cells.sound && !hasRepeats(columns.entries) && haveRightSigns(columns);
  return { ...columns, print: cells.prints.total(), sound };
}

const NO_MOVES: RecognisedTable = { kind: 'moves', position: new Map(), range: [] };

/** The sign that each reason must have; counted and reversed may have either. */
const signs: Partial<Readonly<Record<MoveReason, 1 | -1>>> = {
  used: -1,
  sold: -1,
  wasted: -1,
  'left over': 1,
  spare: 1,
  made: 1,
};

/** 1 or -1 where quantities of the reason may have that sign only; 0 suits every reason. */
export const signOf = (reason: MoveReason): 1 | -1 | undefined => signs[reason];

function haveRightSigns({ reasons, quantities }: Pick<MoveCells, 'reasons' | 'quantities'>) {
  const signAt = reasons.values.map((reason) => signOf(reason) ?? 0);
  return quantities.every((quantity, row) => {
    const sign = signAt[reasons.places[row] as number] as number;
    return quantity * sign >= 0;
  });
}

type Key = keyof typeof tables.moves.columns;

/** Reads the columns of the rows that are filled in. */
class MoveCellReader {
  readonly prints: RowPrints;
  /** Whether all cells read so far could be. */
  sound = true;
  private readonly table: RecognisedTable;
  private readonly rows: readonly (readonly Cell[])[];

  constructor(table: RecognisedTable) {
    this.table = table;
    this.rows = filledRows(table);
    this.prints = new RowPrints(this.rows.length);
  }

  /** A column of numbers or days; NaN where a cell is blank. */
  numbers(key: Key): Float64Array {
    const { read, cellOf, print } = this.column(key);
    const numbers = new Float64Array(this.rows.length).fill(NaN);
    this.rows.forEach((cells, row) => {
      const cell = cellOf(cells);
      this.prints.addCell(row, print, cell);
      const number = this.noticed(read(cell));
      if (typeof number === 'number') numbers[row] = number;
    });
    return numbers;
  }

  /** A column in which nearly every row has a text of its own. */
  texts(key: Key): string[] {
    const { read, cellOf, print } = this.column(key);
    return this.rows.map((cells, row) => {
      const cell = cellOf(cells);
      this.prints.addCell(row, print, cell);
      return (this.noticed(read(cell)) ?? '') as string;
    });
  }

  /** A column in which few different texts stand many times; "" where a cell is blank. */
  repeated<T extends string>(key: Key): Repeated<T> {
    const { read, cellOf, print } = this.column(key);
    const places = new Int32Array(this.rows.length);
    const seen = new Map<Cell, number>();
    this.rows.forEach((cells, row) => {
      const cell = cellOf(cells);
      let place = seen.get(cell);
      if (place === undefined) {
        place = seen.size;
        seen.set(cell, place);
      }
      places[row] = place;
    });
    const different = [...seen.keys()];
    const prints = new RowPrints(different.length);
    different.forEach((cell, place) => prints.addCell(place, print, cell));
    places.forEach((place, row) => this.prints.addPrint(row, prints, place));
    return { values: different.map((cell) => (this.noticed(read(cell)) ?? '') as T), places };
  }

  private column(key: Key) {
    const { read } = tables.moves.columns[key];
    const at = this.table.position.get(key);
    const cellOf = at === undefined ? () => '' : (cells: readonly Cell[]) => cells[at] ?? '';
    return { read, cellOf, print: columnPrint('moves', key) };
  }

  private noticed<T>(value: T | Trouble): T | undefined {
    if (!(value instanceof Trouble)) return value;
    this.sound = false;
    return undefined;
  }
}

/** The rows below the headers but the blank ones. A row with an Entry, as nearly all have, isn't blank. */
function filledRows({ range, position }: RecognisedTable): readonly (readonly Cell[])[] {
  const entry = position.get('entry') ?? -1;
  const all = [...position.values()];
  return range
    .slice(1)
    .filter((cells) => !isBlank(cells[entry]) || !all.every((at) => isBlank(cells[at])));
}

import { isBlank } from '../column.ts';

/** 64 bits as two lanes of 32, which every engine multiplies fast and alike. */
export interface Fingerprint {
  readonly high: number;
  readonly low: number;
}

/**
 * Fingerprints of rows. A row's is the sum of its cells', each of which depends on its column, so
 * the order of columns never matters; a blank cell adds nothing, so a column left out is one of
 * blanks. `total` adds the rows up, each spread first, so the order of rows never matters either.
 */
export class RowPrints {
  high: Int32Array;
  low: Int32Array;

  constructor(rows: number) {
    this.high = new Int32Array(rows);
    this.low = new Int32Array(rows);
  }

  /** The same with room for so many rows; those that there are not yet have nothing in them. */
  copy(rows: number): RowPrints {
    const copy = new RowPrints(rows);
    copy.high.set(this.high.subarray(0, rows));
    copy.low.set(this.low.subarray(0, rows));
    return copy;
  }

  /** Takes all cells out of a row. */
  clear(row: number): void {
    this.high[row] = 0;
    this.low[row] = 0;
  }

  /** Makes sure that there is such a row, where it isn't known from the start how many there are. */
  makeRoomFor(row: number): void {
    if (row < this.high.length) return;
    this.high = longer(this.high);
    this.low = longer(this.low);
  }

  /** A cell's type counts too: the text "1" and the number 1 are not the same. */
  addCell(row: number, column: Fingerprint, cell: unknown): void {
    if (typeof cell === 'number') this.addNumber(row, column, cell);
    else if (typeof cell === 'boolean') this.addWords(row, column, BOOLEAN, cell ? 1 : 0);
    else if (isBlank(cell)) return;
    else if (typeof cell === 'string') this.addText(row, column, cell);
    // No column takes it, so one print for all such cells does: no book is ever kept under it.
    else this.addWords(row, column, NOT_PLAIN, 0);
  }

  addNumber(row: number, column: Fingerprint, number: number): void {
    // Plain 0 for -0, which is the same number.
    bits[0] = number + 0;
    this.addWords(row, column, words[0] as number, words[1] as number);
  }

  addText(row: number, column: Fingerprint, text: string): void {
    let high = column.high ^ TEXT;
    let low = column.low ^ TEXT;
    for (let i = 0; i < text.length; i += 1) {
      const letter = text.charCodeAt(i);
      high = Math.imul(high ^ letter, 0x01000193);
      low = Math.imul((low ^ letter) + 0x7ed55d16, 0x85ebca6b) ^ (low >>> 15);
    }
    this.addLanes(row, spread(high ^ text.length), spread(low ^ text.length));
  }

  /** Adds what was worked out once for a cell that stands in many rows. */
  addPrint(row: number, known: RowPrints, place: number): void {
    this.addLanes(row, known.high[place] as number, known.low[place] as number);
  }

  /** The fingerprint of all rows together. */
  total(): Fingerprint {
    let [high, low] = [0, 0];
    for (let row = 0; row < this.high.length; row += 1) {
      const [rowHigh, rowLow] = [this.high[row] as number, this.low[row] as number];
      high = (high + spread(rowHigh ^ rowLow)) | 0;
      low = (low + spread(rowLow)) | 0;
    }
    return { high, low };
  }

  private addWords(row: number, column: Fingerprint, first: number, second: number): void {
    // The halves are turned in one lane, so that no change of both can cancel out in both lanes.
    const high = Math.imul(column.high ^ first, 0x9e3779b1) ^ second;
    const low = Math.imul(column.low ^ second, 0x85ebca77) ^ ((first << 16) | (first >>> 16));
    this.addLanes(row, spread(high), spread(low));
  }

  private addLanes(row: number, high: number, low: number): void {
    this.high[row] = (this.high[row] as number) + high;
    this.low[row] = (this.low[row] as number) + low;
  }
}

const columnPrints = new Map<string, Fingerprint>();

/** What the fingerprints of a table's column begin with. */
export function columnPrint(table: string, column: string): Fingerprint {
  const name = `${table} ${column}`;
  let print = columnPrints.get(name);
  if (print === undefined) {
    const prints = new RowPrints(1);
    prints.addText(0, { high: 0x9e3779b1, low: 0x85ebca77 }, name);
    print = prints.total();
    columnPrints.set(name, print);
  }
  return print;
}

export const hex = ({ high, low }: Fingerprint): string =>
  [high, low].map((lane) => (lane >>> 0).toString(16).padStart(8, '0')).join('');

export const together = (a: Fingerprint, b: Fingerprint): Fingerprint => ({
  high: (a.high + b.high) | 0,
  low: (a.low + b.low) | 0,
});

const TEXT = 0x7e570000;
const BOOLEAN = 0xb001ea00;
const NOT_PLAIN = 0x0b1ec700;

const bits = new Float64Array(1);
const words = new Int32Array(bits.buffer);

/** Makes each bit of a lane count for all (the last steps of a 32-bit mixer). */
function spread(lane: number): number {
  let mixed = Math.imul(lane ^ (lane >>> 16), 0x85ebca6b);
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
  return mixed ^ (mixed >>> 16);
}

function longer(lanes: Int32Array): Int32Array {
  const copy = new Int32Array(lanes.length * 2 + 16);
  copy.set(lanes);
  return copy;
}

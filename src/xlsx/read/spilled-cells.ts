import type { CellImage, RangeImage } from '../image.ts';
import { MAX_COLUMNS } from '../limits.ts';

/**
 * The cells without those that only show part of a neighbour's result: they hold nothing themselves, but
 * their style still shows. Ranges may overlap, as only a made-up file's do; each cell and each range is
 * looked at a bounded number of times.
 */
export function withoutSpilled(
  cells: readonly CellImage[],
  spills: readonly RangeImage[],
): readonly CellImage[] {
  if (spills.length === 0) return cells;
  const spilled = spilledOf(cells, spills);
  return cells.flatMap((cell) => {
    if (!spilled.has(cell)) return [cell];
    return cell.style === 0 ? [] : [{ ...cell, value: '' }];
  });
}

/** Goes down the rows, with the ranges that reach each of them at hand. */
function spilledOf(cells: readonly CellImage[], spills: readonly RangeImage[]): Set<CellImage> {
  const begins = [...spills].sort((a, b) => a.startRow - b.startRow).values();
  const ends = [...spills].sort((a, b) => a.endRow - b.endRow).values();
  let [begin, end] = [begins.next(), ends.next()];
  const covers = columnCovers();
  const spilled = new Set<CellImage>();
  for (const cell of [...cells].sort((a, b) => a.row - b.row)) {
    for (; !begin.done && begin.value.startRow <= cell.row; begin = begins.next()) {
      covers.add(begin.value, 1);
    }
    for (; !end.done && end.value.endRow < cell.row; end = ends.next()) covers.add(end.value, -1);
    if (cell.formula === undefined && covers.of(cell.column) > 0) spilled.add(cell);
  }
  return spilled;
}

interface ColumnCovers {
  /** Counts a range's columns once more, or with -1 once less. */
  add(range: RangeImage, times: 1 | -1): void;
  /** How many ranges cover a column. */
  of(column: number): number;
}

/** A tree of partial sums (Fenwick): adding a range and asking a column take 15 steps each, however many there are. */
function columnCovers(): ColumnCovers {
  const sums = new Int32Array(MAX_COLUMNS + 2);
  const addFrom = (column: number, times: number) => {
    for (let at = column + 1; at < sums.length; at += at & -at) sums[at] = (sums[at] ?? 0) + times;
  };
  return {
    add({ startColumn, endColumn }, times) {
      addFrom(startColumn, times);
      addFrom(endColumn + 1, -times);
    },
    of(column) {
      let sum = 0;
      for (let at = column + 1; at > 0; at -= at & -at) sum += sums[at] ?? 0;
      return sum;
    },
  };
}

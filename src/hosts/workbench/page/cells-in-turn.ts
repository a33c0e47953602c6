import type { CellPlace } from './places.ts';
import type { SheetCells } from './sheet-cells.ts';

/** The workbook's cells from its opening on, whoever holds them at the time. */
export interface CellsInTurn extends SheetCells {
  /** `next` holds the cells from now on. What was written since the first began is written there before. */
  handOver(next: SheetCells): void;
}

/** Begins with `first`, which must stand as the workbook was read. */
export function createCellsInTurn(first: SheetCells): CellsInTurn {
  let holder = first;
  /** What was done to the first, in order, for the one that takes over. */
  let done: ((next: SheetCells) => void)[] = [];
  const isFirst = () => holder === first;
  const listeners = new Set<(cells: readonly CellPlace[]) => void>();
  const listen = () => {
    holder.onEdit((cells) => {
      for (const listener of listeners) listener(cells);
    });
  };
  listen();
  return {
    get worksOut() {
      return holder.worksOut;
    },
    sheetName: (sheetId) => holder.sheetName(sheetId),
    read: (place) => holder.read(place),
    values: (sheetId, range) => holder.values(sheetId, range),
    formulas: () => holder.formulas(),
    isBlank: (sheetId, range) => holder.isBlank(sheetId, range),
    write(cells) {
      const writer = holder;
      const before = cells.map((place) => ({ ...place, value: writer.read(place).value }));
      // Noted first: whoever hears of the write may write on.
      if (isFirst()) done.push((next) => void next.write(cells));
      const undo = writer.write(cells);
      return () => {
        if (isFirst()) done.push((next) => void next.write(before));
        // Only plain values were written over, so another holder can have them back as values.
        if (holder === writer) undo();
        else holder.write(before);
      };
    },
    takeLook(sheetId, range, likeRow) {
      if (isFirst()) done.push((next) => void next.takeLook(sheetId, range, likeRow));
      holder.takeLook(sheetId, range, likeRow);
    },
    onEdit: (listener) => void listeners.add(listener),
    settled: () => holder.settled(),
    handOver(next) {
      for (const again of done) again(next);
      done = [];
      holder = next;
      listen();
    },
  };
}

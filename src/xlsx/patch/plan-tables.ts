import { cellName, overlaps, rangeName } from '../address.ts';
import type { RangeImage, SheetEdits, TableImage } from '../image.ts';
import { isEntered, type CellPlan } from './plan-cells.ts';
import type { StoredTable } from '../read/read-table.ts';
import { Refusal } from '../refusal.ts';
import type { SheetIndex } from './sheet-index.ts';

/** A table whose range changes. */
export interface TableChange {
  readonly table: StoredTable;
  readonly ref: RangeImage;
  /** The rows it gains, over its columns. */
  readonly gained: RangeImage | undefined;
}

/**
 * Checks the tables of a request against the file: only the number of rows may change, headers stay,
 * and a table never grows over cells that hold something. Clear such a cell in an earlier edit of
 * the same request to make room.
 */
export function planTables(
  edits: SheetEdits,
  stored: readonly StoredTable[],
  index: SheetIndex,
  plan: CellPlan,
): readonly TableChange[] {
  stored.forEach((table) => {
    refuseNewHeaders(table, plan);
  });
  return edits.tables.flatMap((image) => {
    const table = stored.find((each) => each.name.toLowerCase() === image.name.toLowerCase());
    if (!table) throw new Refusal(`The sheet "${edits.sheet}" has no table "${image.name}".`);
    const change = changeOf(table, image);
    if (change?.gained) refuseOccupied(change, change.gained, stored, index, edits);
    return change ? [change] : [];
  });
}

function changeOf(table: StoredTable, image: TableImage): TableChange | undefined {
  const { ref, totalRows } = table;
  const { range } = image;
  const sameHead =
    range.startRow === ref.startRow &&
    range.startColumn === ref.startColumn &&
    range.endColumn === ref.endColumn &&
    table.hasHeaderRow;
  if (!sameHead || image.headers.join('\n') !== table.headers.join('\n')) {
    throw new Refusal(
      `The columns of the table "${table.name}" can only be changed in Excel or LibreOffice.`,
    );
  }
  const oldEnd = ref.endRow - totalRows;
  if (range.endRow === oldEnd) return undefined;
  if (range.endRow <= ref.startRow) {
    throw new Refusal(`The table "${table.name}" needs at least one row below its header.`);
  }
  if (totalRows > 0) {
    throw new Refusal(
      `The table "${table.name}" has a total row. Turn it off in Excel before adding or removing rows here.`,
    );
  }
  const gained = range.endRow > oldEnd ? { ...range, startRow: oldEnd + 1 } : undefined;
  return { table, ref: range, gained };
}

function refuseOccupied(
  { table }: TableChange,
  gained: RangeImage,
  stored: readonly StoredTable[],
  index: SheetIndex,
  edits: SheetEdits,
): void {
  const cleared = new Set(
    edits.cells
      .filter((edit) => edit.value === '' && edit.formula === undefined)
      .map((edit) => cellName(edit.row, edit.column)),
  );
  const sentence = (what: string) =>
    new Refusal(`The table "${table.name}" has no room to grow: ${what}. Move it first.`);
  for (let row = gained.startRow; row <= gained.endRow; row += 1) {
    for (const { column } of index.cellsIn(row)) {
      const inside = column >= gained.startColumn && column <= gained.endColumn;
      const name = cellName(row, column);
      if (inside && isEntered(index, row, column) && !cleared.has(name)) {
        throw sentence(`cell ${name} below it is not empty`);
      }
    }
  }
  const other = stored.find((each) => each !== table && overlaps(each.ref, gained));
  if (other) throw sentence(`the table "${other.name}" stands below it`);
  const merge = index.merges.find((range) => overlaps(range, gained));
  if (merge) throw sentence(`the merged cells ${rangeName(merge)} stand below it`);
  const array = index.arrays.find(({ range }) => overlaps(range, gained));
  if (array) throw sentence(`a formula's result fills ${rangeName(array.range)} below it`);
}

function refuseNewHeaders(table: StoredTable, plan: CellPlan): void {
  if (!table.hasHeaderRow) return;
  table.headers.forEach((header, offset) => {
    const name = cellName(table.ref.startRow, table.ref.startColumn + offset);
    const planned = plan.get(name);
    if (planned && (planned.formula !== undefined || String(planned.value) !== header)) {
      throw new Refusal(
        `${name} is the header "${header}" of the table "${table.name}". Rename columns in Excel or LibreOffice, where the formulas follow.`,
      );
    }
  });
}

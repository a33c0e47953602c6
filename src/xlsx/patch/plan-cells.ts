import { cellName, contains } from '../address.ts';
import type { CellContent } from '../write/cell-xml.ts';
import type { CellEdit, RangeImage, SheetEdits } from '../image.ts';
import { MAX_COLUMNS, MAX_ROWS } from '../limits.ts';
import { Refusal } from '../refusal.ts';
import type { SheetIndex } from './sheet-index.ts';
import type { StoredCell } from '../read/sheet-walk.ts';

/** What a cell is to hold after the patch. */
export interface PlannedCell extends CellContent {
  /** True for the further cells of a spilled result. */
  readonly computed: boolean;
}

/** Planned cells by "B3". */
export type CellPlan = ReadonlyMap<string, PlannedCell>;

/**
 * Turns edits into the cells to write: the last edit of a cell wins, results spill over the cells
 * they fill and leave those they no longer fill. Refuses to write over another formula's result or
 * to spill over what someone entered.
 */
export function planPatch(edits: SheetEdits, index: SheetIndex): CellPlan {
  const plan = new Map<string, PlannedCell>();
  for (const edit of edits.cells) plan.set(nameOf(edit), { ...checked(edit), computed: false });
  const anchors = new Set(plan.keys());
  for (const { anchor, range } of index.arrays) {
    if (anchors.has(nameOf(anchor))) emptyOldSpill(plan, index, anchor, range);
    else refuseInside(plan, anchor, range);
  }
  for (const edit of [...plan.values()]) spill(plan, index, edit);
  return plan;
}

/** The stored cell at a place. */
export function storedAt(index: SheetIndex, row: number, column: number): StoredCell | undefined {
  return index.cellsIn(row).find((cell) => cell.column === column);
}

/** Whether someone entered something in a stored cell; a part of a spilled result does not count. */
export function isEntered(index: SheetIndex, row: number, column: number): boolean {
  const cell = storedAt(index, row, column);
  if (!cell || (cell.value === undefined && !cell.formula)) return false;
  return (
    cell.formula !== undefined || !index.arrays.some(({ range }) => contains(range, row, column))
  );
}

function checked(edit: CellEdit): CellEdit {
  const { row, column } = edit;
  const inside = Number.isInteger(row) && Number.isInteger(column) && row >= 0 && column >= 0;
  if (!inside || row >= MAX_ROWS || column >= MAX_COLUMNS) {
    throw new Refusal(`There is no cell in row ${row + 1}, column ${column + 1} of a sheet.`);
  }
  return edit;
}

function nameOf({ row, column }: { readonly row: number; readonly column: number }): string {
  return cellName(row, column);
}

function emptyOldSpill(
  plan: Map<string, PlannedCell>,
  index: SheetIndex,
  anchor: StoredCell,
  range: RangeImage,
): void {
  for (let row = range.startRow; row <= range.endRow; row += 1) {
    for (const { column } of index.cellsIn(row)) {
      const name = cellName(row, column);
      const leftover = contains(range, row, column) && name !== nameOf(anchor) && !plan.has(name);
      if (leftover) plan.set(name, { row, column, value: '', computed: true });
    }
  }
}

/** Part of a result can't be changed without its formula; a blank there changes nothing. */
function refuseInside(plan: Map<string, PlannedCell>, anchor: StoredCell, range: RangeImage): void {
  for (const [name, { row, column, value, formula }] of [...plan]) {
    if (!contains(range, row, column)) continue;
    if (value === '' && formula === undefined) plan.delete(name);
    else {
      throw new Refusal(
        `${name} shows part of the result of ${nameOf(anchor)}, so nothing can be entered there. Choose another cell.`,
      );
    }
  }
}

function spill(plan: Map<string, PlannedCell>, index: SheetIndex, edit: PlannedCell): void {
  (edit.spill ?? []).forEach((values, down) => {
    values.forEach((value, right) => {
      if (down === 0 && right === 0) return;
      const place = { row: edit.row + down, column: edit.column + right };
      const name = nameOf(checked({ ...place, value }));
      const planned = plan.get(name);
      const entered =
        planned && !planned.computed
          ? planned.value !== '' || planned.formula !== undefined
          : isEntered(index, place.row, place.column);
      if (entered && planned?.value !== value) {
        throw new Refusal(
          `The result of ${nameOf(edit)} would cover ${name}, which is not empty. Clear ${name} or move the formula.`,
        );
      }
      plan.set(name, { ...place, value, computed: true });
    });
  });
}

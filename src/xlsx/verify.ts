import { cellName } from './address.ts';
import { storedFormula, typedFormula } from './formula/formula-text.ts';
import { MAX_COLUMNS } from './limits.ts';
import type { CellEdit, CellImage, SheetEdits, WorkbookImage } from './image.ts';

/**
 * Reads a saved workbook's image against the edits it should hold. Answers the first difference as
 * a sentence, or undefined when every edit is there.
 */
export function missingEdit(
  workbook: WorkbookImage,
  edits: readonly SheetEdits[],
): string | undefined {
  for (const { sheet: name, cells, tables } of edits) {
    const sheet = workbook.sheets.find((each) => each.name === name);
    if (!sheet) return `the sheet "${name}" is missing`;
    const last = new Map(cells.map((edit) => [placeOf(edit), edit]));
    // A long sheet holds a million cells, of which few were asked for.
    const held = new Map<number, CellImage>();
    for (const cell of sheet.cells) if (last.has(placeOf(cell))) held.set(placeOf(cell), cell);
    for (const [place, edit] of last) {
      if (!holds(held.get(place), edit) && !spilledOver(edits, name, edit)) {
        return `${name}!${cellName(edit.row, edit.column)} does not hold what was entered`;
      }
    }
    for (const table of tables) {
      const found = sheet.tables.find(
        (each) => each.name.toLowerCase() === table.name.toLowerCase(),
      );
      if (found?.range.endRow !== table.range.endRow) {
        return `the table "${table.name}" does not end where it should`;
      }
    }
  }
  return undefined;
}

const placeOf = ({ row, column }: { readonly row: number; readonly column: number }): number =>
  row * MAX_COLUMNS + column;

function holds(cell: CellImage | undefined, edit: CellEdit): boolean {
  if (edit.formula === undefined)
    return cell?.formula === undefined && same(cell?.value ?? '', edit.value);
  const asTyped = typedFormula(storedFormula(edit.formula)).toUpperCase();
  // A young error such as #SPILL! is stored as the nearest that the format knows.
  return (
    cell?.formula?.toUpperCase() === asTyped &&
    (same(cell.value, edit.value) || isError(cell.value))
  );
}

function same(a: unknown, b: unknown): boolean {
  return a === b;
}

function isError(value: unknown): boolean {
  return typeof value === 'string' && value.startsWith('#');
}

function spilledOver(edits: readonly SheetEdits[], sheet: string, edit: CellEdit): boolean {
  return edits
    .filter((each) => each.sheet === sheet)
    .flatMap((each) => each.cells)
    .some(({ row, column, spill }) => {
      const line = spill?.[edit.row - row];
      return line !== undefined && edit.column >= column && edit.column < column + line.length;
    });
}

import { cellName, contains, rangeName } from '../address.ts';
import { typedFormula } from '../formula/formula-text.ts';
import type { SheetEdits } from '../image.ts';
import { patchedCellXml } from './patch-cell.ts';
import { patchRows, type CellText } from './patch-rows.ts';
import { planPatch, storedAt, type CellPlan, type PlannedCell } from './plan-cells.ts';
import { planTables, type TableChange } from './plan-tables.ts';
import type { StoredTable } from '../read/read-table.ts';
import { formulaTexts, lostGroups, orphanTexts, sharedId } from './shared-groups.ts';
import { indexSheet, type SheetIndex } from './sheet-index.ts';
import type { StoredCell } from '../read/sheet-walk.ts';
import { applySplices, withAttribute, type Splice } from '../xml/splice.ts';
import { rootPrefix } from '../xml/xml-walk.ts';

export interface PatchedSheet {
  readonly text: string;
  readonly tables: readonly TableChange[];
  /** True when some formula came, went or reads differently now. */
  readonly formulasChanged: boolean;
}

/** Applies edits to one worksheet part. `dynamic` is the metadata entry for spilled formulas. */
export function patchSheet(
  part: string,
  source: string,
  edits: SheetEdits,
  storedTables: readonly StoredTable[],
  dynamic: number | undefined,
): PatchedSheet {
  const index = indexSheet(part, source);
  const plan = planPatch(edits, index);
  const tables = planTables(edits, storedTables, index, plan);
  const texts = formulaTexts(index);
  const lost = lostGroups(index, plan, texts);
  const prefix = rootPrefix(index.source);
  const written = [...withNewRows(plan, tables)].map(([name, planned]): CellText => {
    const stored = storedAt(index, planned.row, planned.column);
    const style = styleOf(planned, stored, index, tables);
    const orphan = stored !== undefined && lost.has(sharedId(stored) ?? '');
    const before = orphan ? undefined : texts.get(name);
    const manner = { style, prefix, dynamic };
    const text = patchedCellXml(planned, stored, before, index.source, manner);
    return { row: planned.row, column: planned.column, text };
  });
  const cells = [...written, ...orphanTexts(index, plan, texts, lost, prefix)];
  const splices = [...patchRows(index, cells, prefix), ...dimensionSplice(index, cells)];
  return {
    text: applySplices(index.source, splices),
    tables,
    formulasChanged: [...plan].some(([name, planned]) => {
      const before = texts.get(name);
      return (before === undefined ? undefined : typedFormula(before)) !== planned.formula;
    }),
  };
}

/** The plan, with a blank for each cell of a table's new rows that has no content of its own. */
function withNewRows(plan: CellPlan, tables: readonly TableChange[]): CellPlan {
  const whole = new Map<string, PlannedCell>(plan);
  for (const { gained } of tables) {
    if (!gained) continue;
    for (let row = gained.startRow; row <= gained.endRow; row += 1) {
      for (let column = gained.startColumn; column <= gained.endColumn; column += 1) {
        const name = cellName(row, column);
        if (!whole.has(name)) whole.set(name, { row, column, value: '', computed: false });
      }
    }
  }
  return whole;
}

/** A cell keeps its style; in a table's new row it takes that of the last old row. */
function styleOf(
  { row, column }: PlannedCell,
  stored: StoredCell | undefined,
  index: SheetIndex,
  tables: readonly TableChange[],
): number {
  const own = stored?.style ?? 0;
  const growth = tables.find(({ gained }) => gained && contains(gained, row, column));
  if (growth?.gained && own === 0) {
    const above = storedAt(index, growth.gained.startRow - 1, column);
    return above?.style ?? 0;
  }
  return stored ? own : (index.columnStyles.get(column) ?? 0);
}

function dimensionSplice(index: SheetIndex, cells: readonly CellText[]): readonly Splice[] {
  const { dimension } = index;
  if (!dimension) return [];
  const grown = { ...dimension.range };
  for (const { row, column } of cells.filter(({ text }) => text !== '')) {
    grown.startRow = Math.min(grown.startRow, row);
    grown.startColumn = Math.min(grown.startColumn, column);
    grown.endRow = Math.max(grown.endRow, row);
    grown.endColumn = Math.max(grown.endColumn, column);
  }
  const ref = rangeName(grown);
  if (ref === rangeName(dimension.range)) return [];
  return [{ ...dimension, text: withAttribute(dimension.text, 'ref', ref) }];
}

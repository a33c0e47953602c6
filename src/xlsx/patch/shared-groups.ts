import { cellName } from '../address.ts';
import { typedFormula } from '../formula/formula-text.ts';
import type { CellText } from './patch-rows.ts';
import type { CellPlan } from './plan-cells.ts';
import { sharedFormulas } from '../read/read-sheet.ts';
import type { SheetIndex } from './sheet-index.ts';
import type { StoredCell } from '../read/sheet-walk.ts';
import { escapeXml } from '../xml/xml-text.ts';

/** Every formula's stored text, shared ones moved to their cell, by cell name. */
export function formulaTexts(index: SheetIndex): ReadonlyMap<string, string> {
  const textOf = sharedFormulas();
  const texts = new Map<string, string>();
  for (const cell of index.formulas) {
    const text = textOf(cell);
    if (text !== undefined) texts.set(cellName(cell.row, cell.column), text);
  }
  return texts;
}

/** The shared formulas (by their `si`) whose keeping cell loses them in this plan. */
export function lostGroups(
  index: SheetIndex,
  plan: CellPlan,
  texts: ReadonlyMap<string, string>,
): ReadonlySet<string> {
  const lost = new Set<string>();
  for (const cell of index.formulas) {
    const si = sharedId(cell);
    const name = cellName(cell.row, cell.column);
    const planned = plan.get(name);
    const stays = !planned || planned.formula === typedFormula(texts.get(name) ?? '');
    if (si !== undefined && cell.formula?.text !== '' && !stays) lost.add(si);
  }
  return lost;
}

/** Cells left alone by the plan whose shared formula is lost: each gets the formula for itself. */
export function orphanTexts(
  index: SheetIndex,
  plan: CellPlan,
  texts: ReadonlyMap<string, string>,
  lost: ReadonlySet<string>,
  prefix: string,
): readonly CellText[] {
  if (lost.size === 0) return [];
  return index.formulas
    .filter((cell) => lost.has(sharedId(cell) ?? '') && !plan.has(cellName(cell.row, cell.column)))
    .map((cell) => {
      const { row, column, formula, start, end } = cell;
      const own = `<${prefix}f>${escapeXml(texts.get(cellName(row, column)) ?? '')}</${prefix}f>`;
      const before = index.source.slice(start, formula?.start);
      return { row, column, text: before + own + index.source.slice(formula?.end, end) };
    });
}

/** The shared formula that a cell takes part in. */
export function sharedId({ formula }: StoredCell): string | undefined {
  return formula?.attributes['t'] === 'shared' ? formula.attributes['si'] : undefined;
}

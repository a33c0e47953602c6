import { cellName, rangeName } from '../address.ts';
import { cellXml, resultXml, type CellManner } from '../write/cell-xml.ts';
import { mayFillCells, typedFormula } from '../formula/formula-text.ts';
import type { PlannedCell } from './plan-cells.ts';
import type { StoredCell } from '../read/sheet-walk.ts';
import { escapeXml } from '../xml/xml-text.ts';

/**
 * The new `<c>` for a planned cell. A formula that did not change keeps its stored form (shared,
 * array, calculation flags) and only gets its new result.
 */
export function patchedCellXml(
  planned: PlannedCell,
  stored: StoredCell | undefined,
  storedText: string | undefined,
  source: string,
  manner: CellManner,
): string {
  const unchanged =
    stored?.formula !== undefined &&
    storedText !== undefined &&
    planned.formula !== undefined &&
    typedFormula(storedText) === planned.formula;
  if (!unchanged) return cellXml(planned, { ...manner, computed: planned.computed });
  const kept = keptFormula(planned, stored, source, manner);
  if (kept === undefined) return cellXml(planned, manner);
  const { type, body } = resultXml(planned, manner.prefix);
  const style = manner.style ? ` s="${manner.style}"` : '';
  const cm = stored.metadata ? ` cm="${stored.metadata}"` : '';
  const { prefix: p } = manner;
  return `<${p}c r="${cellName(planned.row, planned.column)}"${style}${type}${cm}>${kept}${body}</${p}c>`;
}

/** The stored `<f>` with its range brought up to date; undefined when it must be written afresh. */
function keptFormula(
  { row, column, spill = [] }: PlannedCell,
  { formula, metadata }: StoredCell,
  source: string,
  { prefix: p, dynamic }: CellManner,
): string | undefined {
  if (!formula) return undefined;
  // LibreOffice saves a spilling formula as an array of fixed size; make it spill again.
  const spills = mayFillCells(formula.text) && dynamic !== undefined;
  if (spills && metadata === undefined) return undefined;
  const rows = Math.max(1, spill.length);
  const columns = Math.max(1, ...spill.map((line) => line.length));
  if (formula.attributes['t'] !== 'array') {
    return rows === 1 && columns === 1 ? source.slice(formula.start, formula.end) : undefined;
  }
  const range = {
    startRow: row,
    startColumn: column,
    endRow: row + rows - 1,
    endColumn: column + columns - 1,
  };
  const attributes = Object.entries({ ...formula.attributes, ref: rangeName(range) })
    .map(([name, value]) => ` ${name}="${escapeXml(value)}"`)
    .join('');
  return `<${p}f${attributes}>${escapeXml(formula.text)}</${p}f>`;
}

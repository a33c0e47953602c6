import { parseRange } from '../address.ts';
import { cellValue } from './cell-value.ts';
import { typedFormula } from '../formula/formula-text.ts';
import { shiftFormula } from '../formula/formula-shift.ts';
import type { CellImage, RangeImage } from '../image.ts';
import { sheetFeatures, type SheetFeatures } from './sheet-features.ts';
import { withoutSpilled } from './spilled-cells.ts';
import { walkSheet, type CellRoom, type StoredCell } from './sheet-walk.ts';

/** A worksheet part's own content, references not yet resolved. */
export interface StoredSheet extends SheetFeatures {
  readonly cells: readonly CellImage[];
}

/** Reads one worksheet part. `styleCount` bounds the style numbers that cells may name, `room` the cells. */
export function readSheet(
  part: string,
  source: string,
  strings: readonly string[],
  styleCount: number,
  room?: CellRoom,
): StoredSheet {
  const cells: CellImage[] = [];
  const spills: RangeImage[] = [];
  const formulas = sharedFormulas();
  const features = sheetFeatures();
  const cell = (stored: StoredCell) => {
    const spill = spillOf(stored);
    if (spill) spills.push(spill);
    const image = cellImage(stored, strings, styleCount, formulas(stored), spill);
    if (image.value !== '' || image.formula !== undefined || image.style !== 0) cells.push(image);
  };
  walkSheet(part, source, { ...features.visitor, cell }, room);
  return { ...features.result(), cells: withoutSpilled(cells, spills) };
}

/** Gives each cell its formula as stored; cells that share one get it moved to their place. */
export function sharedFormulas(): (cell: StoredCell) => string | undefined {
  const masters = new Map<string, { row: number; column: number; text: string }>();
  return ({ row, column, formula }) => {
    if (!formula) return undefined;
    const { t, si } = formula.attributes;
    if (t !== 'shared' || si === undefined) return formula.text === '' ? undefined : formula.text;
    if (formula.text !== '') {
      masters.set(si, { row, column, text: formula.text });
      return formula.text;
    }
    const master = masters.get(si);
    return master && shiftFormula(master.text, row - master.row, column - master.column);
  };
}

/** The range an array formula fills, when that is more than its own cell. */
export function spillOf({ formula }: StoredCell): RangeImage | undefined {
  if (formula?.attributes['t'] !== 'array') return undefined;
  const range = parseRange(formula.attributes['ref'] ?? '');
  const one = range && range.startRow === range.endRow && range.startColumn === range.endColumn;
  return one ? undefined : range;
}

function cellImage(
  stored: StoredCell,
  strings: readonly string[],
  styleCount: number,
  formula: string | undefined,
  spill: RangeImage | undefined,
): CellImage {
  const { style } = stored;
  return {
    row: stored.row,
    column: stored.column,
    value: cellValue(stored, strings),
    style: style < styleCount ? style : 0,
    ...(formula === undefined ? {} : { formula: typedFormula(formula) }),
    ...(spill === undefined ? {} : { spill }),
  };
}

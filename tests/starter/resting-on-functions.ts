import type { NewCell, NewWorkbook } from '../../src/xlsx/write/new-workbook.ts';
import { functionAnswersSheet } from '../../src/starter/cells/names.ts';

export interface PlacedCell {
  readonly sheet: string;
  readonly cell: NewCell;
}

interface Block {
  readonly sheet: string;
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

/** Every formula of a visible sheet that asks one of our functions, or looks at a cell that does, however far off. */
export function restingOnFunctions({ sheets }: NewWorkbook): PlacedCell[] {
  const open = sheets
    .filter(({ hidden }) => hidden !== true)
    .flatMap(({ name, cells = [] }) =>
      cells
        .filter(({ formula }) => formula !== undefined)
        .map((cell) => ({ sheet: name, cell, looks: blocksIn(cell.formula ?? '', name) })),
    );
  const resting: PlacedCell[] = [];
  const places = new Map<string, Map<number, number[]>>();
  const rests = ({ sheet, top, left, bottom, right }: Block): boolean => {
    if (sheet === functionAnswersSheet) return true;
    for (const [row, columns] of places.get(sheet) ?? []) {
      if (row >= top && row <= bottom && columns.some((at) => at >= left && at <= right))
        return true;
    }
    return false;
  };
  let left = open;
  for (let before = -1; before !== resting.length;) {
    before = resting.length;
    left = left.filter(({ sheet, cell, looks }) => {
      if (!/POUR\.|\bBook\b/u.test(cell.formula ?? '') && !looks.some(rests)) return true;
      resting.push({ sheet, cell });
      const rows = places.get(sheet) ?? new Map<number, number[]>();
      rows.set(cell.row, [...(rows.get(cell.row) ?? []), cell.column]);
      places.set(sheet, rows);
      return false;
    });
  }
  return resting;
}

const REFERENCE = /(?:'([^']+)'!)?\$?([A-Z]{1,2})\$?(\d+)(?::\$?([A-Z]{1,2})\$?(\d+))?(?![\w(])/gu;

function blocksIn(formula: string, own: string): Block[] {
  const code = formula.replace(/"[^"]*"/gu, '""');
  return [...code.matchAll(REFERENCE)].map(
    ([, sheet, column = '', row = '', lastColumn = column, lastRow = row]) => ({
      sheet: sheet ?? own,
      top: Number(row) - 1,
      left: indexOf(column),
      bottom: Number(lastRow) - 1,
      right: indexOf(lastColumn),
    }),
  );
}

const indexOf = (letters: string): number =>
  [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;

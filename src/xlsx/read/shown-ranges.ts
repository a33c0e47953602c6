import type { CellImage, RangeImage } from '../image.ts';
import { MAX_CHOICES, MAX_COLUMNS, MAX_RANGES, MAX_REACH, MAX_ROWS } from '../limits.ts';
import { Refusal } from '../refusal.ts';
import type { StoredSheet } from './read-sheet.ts';

/** Room below and right of what a sheet holds, so that one can go on typing. */
export const SPARE_ROWS = 200;
export const SPARE_COLUMNS = 8;
/** As many columns as any sheet shows. */
export const FEWEST_COLUMNS = 26;

/** A sheet whose merges, lists and highlights are cut to the part of it that is shown. */
export interface ShownSheet extends StoredSheet {
  readonly shown: RangeImage;
  /** How many of them reached too far and are left out. */
  readonly tooFar: number;
}

/**
 * Cuts the sheets of one workbook, one after the other. One line of a file may claim a whole sheet of 17
 * thousand million cells: so what all together reach of what is shown has a limit too.
 */
export function cutToShown(): (sheet: StoredSheet) => ShownSheet {
  let [ranges, reach] = [0, 0];
  return (sheet) => {
    const shown = shownPart(sheet.cells);
    let tooFar = 0;
    const cut = (range: RangeImage): RangeImage[] => {
      if ((ranges += 1) > MAX_RANGES) {
        throw new Refusal(
          `This workbook has more than ${MAX_RANGES} merges, lists and highlights, so it was not opened.`,
        );
      }
      const part = partOf(range, shown);
      const area = part === undefined ? 0 : areaOf(part);
      if (reach + area > MAX_REACH) {
        tooFar += 1;
        return [];
      }
      reach += area;
      return part === undefined ? [] : [part];
    };
    const merges = sheet.merges.flatMap(cut);
    const validations = sheet.validations.map((list) => ({
      ...list,
      ranges: list.ranges.flatMap(cut),
    }));
    const highlights = sheet.highlights.flatMap((highlight) => {
      // Its formula is written for the first cell of its ranges.
      const [first, ...others] = highlight.ranges.map(cut);
      return first?.length ? [{ ...highlight, ranges: [...first, ...others.flat()] }] : [];
    });
    return { ...sheet, merges, validations, highlights, shown, tooFar };
  };
}

/** The cells of a list's source that are shown; undefined where they are none, or too many to choose from. */
export function choicesIn(range: RangeImage, shown: RangeImage): RangeImage | undefined {
  const part = partOf(range, shown);
  return part !== undefined && areaOf(part) <= MAX_CHOICES ? part : undefined;
}

/** The part of a sheet that is shown: what it holds, with room to go on. */
function shownPart(cells: readonly CellImage[]): RangeImage {
  let [lastRow, lastColumn] = [0, 0];
  for (const { row, column, spill } of cells) {
    lastRow = Math.max(lastRow, spill?.endRow ?? row);
    lastColumn = Math.max(lastColumn, spill?.endColumn ?? column);
  }
  return {
    startRow: 0,
    startColumn: 0,
    endRow: Math.min(lastRow + SPARE_ROWS, MAX_ROWS - 1),
    endColumn: Math.min(Math.max(lastColumn + SPARE_COLUMNS, FEWEST_COLUMNS - 1), MAX_COLUMNS - 1),
  };
}

function partOf(range: RangeImage, shown: RangeImage): RangeImage | undefined {
  const endRow = Math.min(range.endRow, shown.endRow);
  const endColumn = Math.min(range.endColumn, shown.endColumn);
  return endRow < range.startRow || endColumn < range.startColumn
    ? undefined
    : { ...range, endRow, endColumn };
}

const areaOf = ({ startRow, startColumn, endRow, endColumn }: RangeImage): number =>
  (endRow - startRow + 1) * (endColumn - startColumn + 1);

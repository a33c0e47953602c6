import { cell, titleCells } from './answer-cells.ts';
import { cellName } from './cell-names.ts';
import { block, pour } from './formula.ts';
import type { Mark, StarterSheet } from './sheet.ts';
import { colourList } from './lists-sheet.ts';
import { widths } from './weigh-sheet.ts';

const TOP = 4;
const LEFT = 0;
/** Room for the tiles of most bars, each way; what a bar doesn't have stays blank. */
const SIDE = 8;
const COUNT = LEFT + SIDE + 1;

/** A pattern of colour names, row by row, and the shade to show for each name. */
export interface Mosaic {
  readonly pattern: readonly (readonly string[])[];
  readonly shades: Readonly<Record<string, { readonly fill: string; readonly color: string }>>;
}

/** Lay out a bar's mosaic by picking a colour for each tile; the tiles of each colour are counted. */
export function mosaicSheet({ pattern, shades }: Mosaic): StarterSheet {
  const range = {
    startRow: TOP,
    startColumn: LEFT,
    endRow: TOP + SIDE - 1,
    endColumn: LEFT + SIDE - 1,
  };
  const tiles = Array.from({ length: SIDE * SIDE }, (_, index) => {
    const [down, right] = [Math.floor(index / SIDE), index % SIDE];
    return cell(TOP + down, LEFT + right, pattern[down]?.[right] ?? '', 'tile', 'text');
  });
  const count = pour('TILECOUNT', block(range.startRow, LEFT, range.endRow, range.endColumn));
  return {
    name: 'Mosaic',
    group: 'answers',
    widths: widths([...Array.from({ length: SIDE }, () => 11), 4, 20, 9]),
    heights: Object.fromEntries(Array.from({ length: SIDE }, (_, down) => [TOP + down, 44])),
    cells: [
      ...titleCells(
        'Mosaic',
        'Pick a colour for each tile of one bar and leave the other cells blank, then copy the counts into Bar layers.',
      ),
      ...tiles,
      cell(TOP - 2, COUNT, 'Tiles for one bar', 'heading'),
      cell(TOP - 1, COUNT, count, 'header'),
    ],
    spillLooks: [{ row: TOP - 1, column: COUNT, rows: SIDE, formats: ['text', 'whole'] }],
    dropDowns: [{ range, choices: { source: colourList }, strict: false }],
    marks: Object.entries(shades).map(([name, shade]): Mark => ({
      range,
      formula: `${cellName(TOP, LEFT)}="${name}"`,
      shows: shade,
    })),
    landscape: true,
  };
}
